using System.Globalization;
using HotShop.Physics.Pot;

namespace HotShop.Checks.Pots;

static class PotGeometryChecks
{
    const string Solids = "closed forms of solid geometry, evaluated by other code";
    const string Quadrature = "closed form and numerical quadrature, both by other code";
    const string Practice = "common practice: ";

    static readonly CylinderPot Cylinder = new(radiusMetres: 0.20, heightMetres: 0.45);
    static readonly TaperedPot Cone = new(bottomRadiusMetres: 0.16, topRadiusMetres: 0.22, heightMetres: 0.40);
    static readonly RoundedPot Rounded = new(radiusMetres: 0.20, cornerRadiusMetres: 0.08, heightMetres: 0.45);
    static readonly RoundedPot HalfBall = new(radiusMetres: 0.20, cornerRadiusMetres: 0.20, heightMetres: 0.45);
    static readonly MeasuredPot Measured = new((0.05, 0.004), (0.10, 0.010), (0.20, 0.024), (0.30, 0.040), (0.40, 0.057));

    public static IEnumerable<Check> All => [.. Cylinders, .. Cones, .. RoundBottoms, .. Tables, .. Habits];

    static IEnumerable<Check> Cylinders =>
    [
        Check.Printed("glass 35 cm deep in a pot of 40 cm, melt of 2360 kg/m³", "103.80", "kg", Solids, () => new GlassMass(Cylinder).KilogramsAtDepth(0.35), Standing.Computed),
        Check.Printed("fall of its level for a kilogram taken", "3.372", "mm", Solids, () => 1000 / new GlassMass(Cylinder).KilogramsPerMetre(0.35), Standing.Computed),
        Check.Printed("what 5 mm of a dip are worth in it", "1.48", "kg", Solids, () => 0.005 * new GlassMass(Cylinder).KilogramsPerMetre(0.35), Standing.Computed),
        Check.Printed("depth of 60 kg in it", "202.32", "mm", Solids, () => 1000 * new GlassMass(Cylinder).DepthMetres(60), Standing.Computed),
        Check.Printed("freeboard over 60 kg in it, 45 cm high", "247.68", "mm", Solids, () => 1000 * new GlassMass(Cylinder).FreeboardMetres(60), Standing.Computed),
        Check.Printed("density of soda-lime melt at 1150 °C", "2360", "kg/m³", "partial molar volumes of Lange 1997 as listed by Iacovino and Till, Volcanica 2 (2019) 1, evaluated by other code", () => new GlassMass(Cylinder).DensityKilogramsPerCubicMetre, Standing.Computed),
    ];

    static IEnumerable<Check> Cones =>
    [
        Check.Printed("pot tapering from 32 cm to 44 cm over 40 cm", "45.742", "L", Solids, () => 1000 * Cone.FullCubicMetres, Standing.Computed),
        Check.Printed("depth of 80 kg in it", "317.56", "mm", Solids, () => 1000 * new GlassMass(Cone).DepthMetres(80), Standing.Computed),
        Check.Printed("its surface at that depth", "0.13544", "m²", Solids, () => Cone.SurfaceSquareMetres(0.31756), Standing.Computed),
        Check.Printed("mass half way up", "45.52", "kg", Solids, () => new GlassMass(Cone).KilogramsAtDepth(0.20), Standing.Computed),
        Check.Printed("pot narrowing from 48 cm to 38 cm over 38 cm: depth of 100 kg", "272.98", "mm", Solids, () => 1000 * new GlassMass(new TaperedPot(0.24, 0.19, 0.38)).DepthMetres(100), Standing.Computed),
    ];

    static IEnumerable<Check> RoundBottoms =>
    [
        Check.Printed("pot of 40 cm with a corner of 8 cm: below 3 cm", "2.5389", "L", Quadrature, () => 1000 * Rounded.VolumeCubicMetres(0.03), Standing.Computed),
        Check.Printed("the same pot: below 8 cm, where its wall begins", "8.4814", "L", Quadrature, () => 1000 * Rounded.VolumeCubicMetres(0.08), Standing.Computed),
        Check.Printed("the same pot: 35 cm deep", "100.09", "kg", Quadrature, () => new GlassMass(Rounded).KilogramsAtDepth(0.35), Standing.Computed),
        Check.Printed("the same pot: surface 3 cm deep", "0.10458", "m²", Solids, () => Rounded.SurfaceSquareMetres(0.03), Standing.Computed),
        Check.Printed("the same pot: depth of 10 kg, in the corner", "45.34", "mm", Quadrature, () => 1000 * new GlassMass(Rounded).DepthMetres(10), Standing.Computed),
        Check.Printed("the same pot: depth of 60 kg, above it", "214.82", "mm", Quadrature, () => 1000 * new GlassMass(Rounded).DepthMetres(60), Standing.Computed),
        Check.Printed("half-round bottom of 20 cm radius, 10 cm deep: the cap of a ball", "5.236", "L", "π h² (3 S − h)/3", () => 1000 * HalfBall.VolumeCubicMetres(0.10), Standing.Computed),
        Check.Printed("the whole half-ball of it", "16.755", "L", "2/3 π S³", () => 1000 * HalfBall.VolumeCubicMetres(0.20), Standing.Computed),
        Check.Printed("surface of the cap 10 cm deep", "0.094248", "m²", "π h (2 S − h)", () => HalfBall.SurfaceSquareMetres(0.10), Standing.Computed),
    ];

    // Libraries set the slopes at the two ends otherwise; only the inner stretches are compared.
    static IEnumerable<Check> Tables =>
    [
        .. from row in new[] { (0.05, "4"), (0.10, "10"), (0.20, "24"), (0.40, "57") }
           select new Check(string.Create(CultureInfo.InvariantCulture, $"measured pot: at its mark of {100 * row.Item1:0} cm"), row.Item2, "L", 1e-9, "the marks themselves", Standing.Computed, () => 1000 * Measured.VolumeCubicMetres(row.Item1)),
        Check.Printed("measured pot: 15 cm deep, between marks of 10 L at 10 cm and 24 L at 20 cm", "16.7350", "L", "slopes by Fritsch and Carlson's harmonic means, evaluated by other code", () => 1000 * Measured.VolumeCubicMetres(0.15), Standing.Computed),
        Check.Printed("measured pot: 25 cm deep, between marks of 24 L at 20 cm and 40 L at 30 cm", "31.8061", "L", "slopes by Fritsch and Carlson's harmonic means, evaluated by other code", () => 1000 * Measured.VolumeCubicMetres(0.25), Standing.Computed),
        Check.Printed("measured pot: depth of 30 L", "238.748", "mm", "slopes by Fritsch and Carlson's harmonic means, evaluated by other code, bisected", () => 1000 * Measured.DepthMetres(0.030), Standing.Computed),
    ];

    static IEnumerable<Check> Habits =>
    [
        new("small gather", "0.15", "kg", 0, Practice + "0.1 to 0.2", Standing.Memory, () => GatherSizes.NominalKilograms[GatherSizes.Small]),
        new("medium gather", "0.4", "kg", 0, Practice + "0.3 to 0.5", Standing.Memory, () => GatherSizes.NominalKilograms[GatherSizes.Medium]),
        new("large gather", "0.8", "kg", 0, Practice + "0.6 to 1", Standing.Memory, () => GatherSizes.NominalKilograms[GatherSizes.Large]),
        new("glass of a kilogram of cullet", "1", "kg", 0, Practice + "cullet stays whole", Standing.Memory, () => ChargeMaterial.Cullet.GlassKilograms(1)),
        new("glass of a kilogram of frit", "1", "kg", 0, Practice + "frit stays whole", Standing.Memory, () => ChargeMaterial.Frit.GlassKilograms(1)),
        new("glass of a kilogram of batch", "0.85", "kg", 0, Practice + "0.83 to 0.85", Standing.Memory, () => ChargeMaterial.Batch.GlassKilograms(1)),
    ];
}
