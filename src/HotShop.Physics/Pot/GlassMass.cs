namespace HotShop.Physics.Pot;

/// <summary>Depth of glass in a pot to its mass and back.</summary>
/// <param name="Geometry">Inside of the pot.</param>
/// <param name="DensityKilogramsPerCubicMetre">Of the melt, kg/m³.</param>
public sealed record GlassMass(CrucibleGeometry Geometry, double DensityKilogramsPerCubicMetre = GlassMass.SodaLimeMelt)
{
    /// <summary>Soda-lime melt at 1150 °C, 2360 kg/m³ ± 1.5 %. Source: computed with the partial molar volumes of Lange 1997 as
    /// listed by Iacovino and Till, Volcanica 2 (2019) 1.</summary>
    public const double SodaLimeMelt = 2360;

    public CrucibleGeometry Geometry { get; } = Geometry ?? throw new ArgumentNullException(nameof(Geometry));

    public double DensityKilogramsPerCubicMetre { get; } = Require.Positive(DensityKilogramsPerCubicMetre);

    /// <summary>Mass up to the rim, kg.</summary>
    public double FullKilograms => KilogramsAtDepth(Geometry.HeightMetres);

    /// <summary>Mass that stands this deep, kg.</summary>
    /// <param name="depthMetres">From the lowest point inside, 0 to the height; deeper counts as full.</param>
    public double KilogramsAtDepth(double depthMetres) => DensityKilogramsPerCubicMetre * Geometry.VolumeCubicMetres(depthMetres);

    /// <summary>Depth of a mass, m; more than the pot holds stands at the rim.</summary>
    public double DepthMetres(double kilograms) => Geometry.DepthMetres(kilograms / DensityKilogramsPerCubicMetre);

    /// <summary>Mass per metre of depth at a depth, kg/m.</summary>
    public double KilogramsPerMetre(double depthMetres) => DensityKilogramsPerCubicMetre * Geometry.SurfaceSquareMetres(depthMetres);

    /// <summary>Distance from the glass to the rim, m.</summary>
    public double FreeboardMetres(double kilograms) => Geometry.HeightMetres - DepthMetres(kilograms);
}
