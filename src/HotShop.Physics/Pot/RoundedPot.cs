namespace HotShop.Physics.Pot;

/// <summary>Cylinder whose corner between wall and bottom is rounded, up to a half-round bottom when the corner is as large as
/// the pot's radius.</summary>
public sealed record RoundedPot : CrucibleGeometry
{
    public RoundedPot(double radiusMetres, double cornerRadiusMetres, double heightMetres) : base(heightMetres)
    {
        RadiusMetres = Require.Positive(radiusMetres);
        CornerRadiusMetres = Require.Positive(cornerRadiusMetres);
        if (cornerRadiusMetres > radiusMetres || cornerRadiusMetres > heightMetres)
            throw new ArgumentOutOfRangeException(nameof(cornerRadiusMetres), cornerRadiusMetres,
                "the corner cannot be larger than the pot's radius or height");
    }

    public double RadiusMetres { get; }

    public double CornerRadiusMetres { get; }

    double FlatRadius => RadiusMetres - CornerRadiusMetres;

    private protected override double Volume(double depth)
    {
        var straight = Math.Max(0, depth - CornerRadiusMetres);
        return Corner(depth - straight) + Math.PI * RadiusMetres * RadiusMetres * straight;
    }

    private protected override double Depth(double volume)
    {
        var corner = Corner(CornerRadiusMetres);
        if (volume >= corner) return CornerRadiusMetres + (volume - corner) / (Math.PI * RadiusMetres * RadiusMetres);

        // No closed form in the corner; the volume grows steadily with depth.
        return Halving.Root(0, CornerRadiusMetres, depth => Corner(depth) < volume);
    }

    private protected override double Surface(double depth)
    {
        if (depth >= CornerRadiusMetres) return Math.PI * RadiusMetres * RadiusMetres;
        var radius = FlatRadius + Math.Sqrt(depth * (2 * CornerRadiusMetres - depth));
        return Math.PI * radius * radius;
    }

    /// <summary>Integral of the surface over the corner: π [a² h + 2 a J + r h² − h³/3] with J the integral of the corner's
    /// half-width.</summary>
    double Corner(double depth)
    {
        var r = CornerRadiusMetres;
        var j = (depth - r) / 2 * Math.Sqrt(depth * (2 * r - depth)) + r * r / 2 * (Math.Asin((depth - r) / r) + Math.PI / 2);
        return Math.PI * (FlatRadius * FlatRadius * depth + 2 * FlatRadius * j + r * depth * depth - depth * depth * depth / 3);
    }
}
