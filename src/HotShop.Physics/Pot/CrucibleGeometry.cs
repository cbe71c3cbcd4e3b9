namespace HotShop.Physics.Pot;

/// <summary>Inside of a pot: how much it holds up to a depth of glass, and how deep a volume stands. Inner dimensions in
/// metres.</summary>
public abstract record CrucibleGeometry
{
    private protected CrucibleGeometry(double heightMetres) => HeightMetres = Require.Positive(heightMetres);

    /// <summary>From the lowest point inside to the rim, m.</summary>
    public double HeightMetres { get; }

    /// <summary>Volume up to the rim, m³.</summary>
    public double FullCubicMetres => VolumeCubicMetres(HeightMetres);

    /// <summary>Volume below a depth, m³.</summary>
    /// <param name="depthMetres">From the lowest point inside, 0 to the height; deeper counts as full.</param>
    public double VolumeCubicMetres(double depthMetres) => Volume(Math.Min(Require.NotNegative(depthMetres), HeightMetres));

    /// <summary>Depth at which a volume stands, m; a volume above the full pot stands at the rim.</summary>
    public double DepthMetres(double volumeCubicMetres) =>
        Require.NotNegative(volumeCubicMetres) >= FullCubicMetres ? HeightMetres : Math.Min(Depth(volumeCubicMetres), HeightMetres);

    /// <summary>Free surface of the glass at a depth, m².</summary>
    public double SurfaceSquareMetres(double depthMetres) => Surface(Math.Min(Require.NotNegative(depthMetres), HeightMetres));

    private protected abstract double Volume(double depth);

    private protected abstract double Depth(double volume);

    private protected abstract double Surface(double depth);
}
