namespace HotShop.Physics.Pot;

/// <summary>Truncated cone: straight walls leaning out (or in) on a flat bottom.</summary>
public sealed record TaperedPot : CrucibleGeometry
{
    public TaperedPot(double bottomRadiusMetres, double topRadiusMetres, double heightMetres) : base(heightMetres) =>
        (BottomRadiusMetres, TopRadiusMetres) = (Require.Positive(bottomRadiusMetres), Require.Positive(topRadiusMetres));

    public double BottomRadiusMetres { get; }

    public double TopRadiusMetres { get; }

    /// <summary>Gain of radius per metre of depth.</summary>
    double Taper => (TopRadiusMetres - BottomRadiusMetres) / HeightMetres;

    // Written without a division by the taper, so that walls all but straight lose no digits.
    private protected override double Volume(double depth)
    {
        var top = BottomRadiusMetres + Taper * depth;
        return Math.PI / 3 * depth * (BottomRadiusMetres * BottomRadiusMetres + BottomRadiusMetres * top + top * top);
    }

    private protected override double Depth(double volume)
    {
        var cubed = Math.Pow(BottomRadiusMetres, 3);
        var top = Math.Cbrt(cubed + 3 * Taper * volume / Math.PI);
        // (top - bottom)/taper with the difference of cubes written out, for the same reason.
        return 3 * volume / Math.PI / (top * top + top * BottomRadiusMetres + BottomRadiusMetres * BottomRadiusMetres);
    }

    private protected override double Surface(double depth)
    {
        var radius = BottomRadiusMetres + Taper * depth;
        return Math.PI * radius * radius;
    }
}
