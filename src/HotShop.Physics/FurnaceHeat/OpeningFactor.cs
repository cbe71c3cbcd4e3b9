namespace HotShop.Physics.FurnaceHeat;

/// <summary>Share of a furnace's radiation that gets out through a hole in its wall: what strikes the hole's sides is sent back or on, and the thicker the wall
/// against the hole, the less leaves.</summary>
/// <remarks>Source: polynomials of Oak Ridge National Laboratory (opening-factors.json). They lie up to 0.04 below (1 + F12)/2, what a hole with perfectly
/// re-radiating sides would pass (<see cref="DiskPair"/>).</remarks>
public static class OpeningFactor
{
    /// <summary>Largest error that is likely, as a share: the distance to the bound above.</summary>
    public const double LikelyError = 0.04;

    const double FirstFitted = 0.1, Seam = 1, LastFitted = 6, Percent = 100;

    static readonly Lazy<OpeningShape[]> Shapes = new(() => EmbeddedJson.Read<OpeningTable>("FurnaceHeat.opening-factors.json").Shapes);

    /// <summary>Of a round hole, 0 to 1.</summary>
    /// <param name="diameterMetres">Above 0.</param>
    /// <param name="wallMetres">Thickness of the wall around it, 0 or above; 0 lets everything out.</param>
    public static double Round(double diameterMetres, double wallMetres) => At(Shapes.Value[0], Require.Positive(diameterMetres), Require.NotNegative(wallMetres));

    /// <summary>Of a rectangular hole, 0 to 1; the order of the two does not matter.</summary>
    /// <param name="widthMetres">Above 0.</param>
    /// <param name="heightMetres">Above 0.</param>
    /// <param name="wallMetres">Thickness of the wall around it, 0 or above.</param>
    public static double Rectangular(double widthMetres, double heightMetres, double wallMetres)
    {
        var (shorter, longer) = (Math.Min(Require.Positive(widthMetres), Require.Positive(heightMetres)), Math.Max(widthMetres, heightMetres));
        Require.NotNegative(wallMetres);
        var longOverShort = longer / shorter;
        var next = Array.FindIndex(Shapes.Value, 1, s => s.LongOverShort > longOverShort);
        if (next < 0) return At(Shapes.Value[^1], shorter, wallMetres);
        var (narrow, wide) = (Shapes.Value[next - 1], Shapes.Value[next]);
        var share = (longOverShort - narrow.LongOverShort) / (wide.LongOverShort - narrow.LongOverShort);
        return (1 - share) * At(narrow, shorter, wallMetres) + share * At(wide, shorter, wallMetres);
    }

    static double At(OpeningShape shape, double shorterMetres, double wallMetres)
    {
        // A narrow deep hole passes in proportion to its width. Beyond the last fitted point what the sides keep back shrinks with the wall, down to nothing.
        var wallsWide = shorterMetres / wallMetres;
        if (wallsWide < FirstFitted) return Fitted(shape, FirstFitted) * wallsWide / FirstFitted;
        return wallsWide > LastFitted ? 1 - (1 - Fitted(shape, LastFitted)) * LastFitted / wallsWide : Fitted(shape, wallsWide);
    }

    static double Fitted(OpeningShape shape, double wallsWide) => Polynomial.At(wallsWide < Seam ? shape.BelowOne : shape.FromOne, wallsWide) / Percent;
}

/// <summary>The stored polynomials, constant term first, in percent; rectangles ascending by their longer side over their shorter one, the round hole before
/// them.</summary>
internal sealed record OpeningTable(string Source, string Licence, OpeningShape[] Shapes);

internal sealed record OpeningShape(string Name, double LongOverShort, double[] BelowOne, double[] FromOne);
