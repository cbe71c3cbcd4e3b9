namespace HotShop.Physics.Pot;

/// <summary>Straight walls on a flat bottom.</summary>
public sealed record CylinderPot : CrucibleGeometry
{
    public CylinderPot(double radiusMetres, double heightMetres) : base(heightMetres) => RadiusMetres = Require.Positive(radiusMetres);

    public double RadiusMetres { get; }

    private protected override double Volume(double depth) => Surface(depth) * depth;

    private protected override double Depth(double volume) => volume / Surface(0);

    private protected override double Surface(double depth) => Math.PI * RadiusMetres * RadiusMetres;
}
