using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Density of melts and of cold glass, and the figures of the glasses that travel with the library.</summary>
static class DensityChecks
{
    const string Lange = "partial molar volumes of Lange 1997 as listed by Iacovino and Till, Volcanica 2 (2019) 1, computed apart in Python";
    const string Scaled = "cold density times what window glass loses on the way, computed apart in Python";
    const string Encyclopaedia = "table of oxide glasses in an encyclopaedia of the public web; open encyclopaedias for container glass";
    const string DataSheet = "data sheets to ISO 3585";
    const string FromMemory = "property tables of glasses, from memory";

    static readonly GlassComposition SixOxides = GlassComposition.OfMoles(new Dictionary<Oxide, double>
    {
        [Oxide.SiO2] = 65, [Oxide.K2O] = 13, [Oxide.Na2O] = 8, [Oxide.CaO] = 6, [Oxide.MgO] = 5, [Oxide.Al2O3] = 3,
    });

    public static IEnumerable<Check> All => [.. Melts, .. Cold, .. Mechanics];

    static IEnumerable<Check> Melts =>
    [
        .. new[] { (1000, "2383.602"), (1150, "2360.969"), (1300, "2338.763") }
            .Select(r => Check.Printed($"window melt at {r.Item1} °C", r.Item2, "kg/m3", Lange, () => GlassProfile.WindowSodaLime.MeltKilogramsPerCubicMetre(r.Item1), Standing.Computed)),
        .. new[] { (800, "2408.6939"), (1150, "2328.2561"), (1500, "2253.0171") }
            .Select(r => Check.Printed($"melt of six oxides at {r.Item1} °C", r.Item2, "kg/m3", Lange, () => MeltVolume.KilogramsPerCubicMetre(SixOxides, r.Item1), Standing.Computed)),
        Check.Printed("soft studio melt at 1150 °C", "2342.23", "kg/m3", Scaled, () => GlassProfile.SoftStudioSodaLime.MeltKilogramsPerCubicMetre(1150), Standing.Computed),
        Check.Printed("soft studio melt at 1250 °C", "2327.50", "kg/m3", Scaled, () => GlassProfile.SoftStudioSodaLime.MeltKilogramsPerCubicMetre(1250), Standing.Computed),
        Check.Printed("lead crystal melt at 1150 °C", "2829.42", "kg/m3", Scaled, () => GlassProfile.LeadCrystal.MeltKilogramsPerCubicMetre(1150), Standing.Computed),
        Check.Printed("borosilicate melt at 1250 °C", "2076.13", "kg/m3", Scaled, () => GlassProfile.Borosilicate33.MeltKilogramsPerCubicMetre(1250), Standing.Computed),
    ];

    static IEnumerable<Check> Cold =>
    [
        Of("window soda-lime, density at 20 °C", "2520", "kg/m3", Encyclopaedia, Standing.Read, () => GlassProfile.WindowSodaLime.ColdKilogramsPerCubicMetre),
        Of("soft studio soda-lime, density at 20 °C", "2500", "kg/m3", FromMemory, Standing.Memory, () => GlassProfile.SoftStudioSodaLime.ColdKilogramsPerCubicMetre),
        Of("lead crystal, density at 20 °C", "3020", "kg/m3", Encyclopaedia, Standing.Read, () => GlassProfile.LeadCrystal.ColdKilogramsPerCubicMetre),
        Of("borosilicate 3.3, density at 20 °C", "2230", "kg/m3", DataSheet, Standing.Read, () => GlassProfile.Borosilicate33.ColdKilogramsPerCubicMetre),
        Of("window soda-lime, linear expansion", "9.0e-6", "1/K", Encyclopaedia, Standing.Read, () => GlassProfile.WindowSodaLime.ExpansionPerKelvin!.Value),
        Of("soft studio soda-lime, linear expansion", "9.8e-6", "1/K", FromMemory, Standing.Memory, () => GlassProfile.SoftStudioSodaLime.ExpansionPerKelvin!.Value),
        Of("lead crystal, linear expansion", "9.5e-6", "1/K", FromMemory, Standing.Memory, () => GlassProfile.LeadCrystal.ExpansionPerKelvin!.Value),
        Of("borosilicate 3.3, linear expansion", "3.3e-6", "1/K", DataSheet, Standing.Read, () => GlassProfile.Borosilicate33.ExpansionPerKelvin!.Value),
    ];

    static IEnumerable<Check> Mechanics =>
    [
        Of("window soda-lime, Young's modulus", "72", "GPa", Encyclopaedia, Standing.Read, () => GlassProfile.WindowSodaLime.YoungGigapascals!.Value),
        Of("soft studio soda-lime, Young's modulus", "70", "GPa", FromMemory, Standing.Memory, () => GlassProfile.SoftStudioSodaLime.YoungGigapascals!.Value),
        Of("lead crystal, Young's modulus", "62", "GPa", FromMemory, Standing.Memory, () => GlassProfile.LeadCrystal.YoungGigapascals!.Value),
        Of("borosilicate 3.3, Young's modulus", "63", "GPa", DataSheet, Standing.Read, () => GlassProfile.Borosilicate33.YoungGigapascals!.Value),
        Of("window soda-lime, Poisson's ratio", "0.22", "1", Encyclopaedia, Standing.Read, () => GlassProfile.WindowSodaLime.PoissonRatio!.Value),
        Of("soft studio soda-lime, Poisson's ratio", "0.22", "1", FromMemory, Standing.Memory, () => GlassProfile.SoftStudioSodaLime.PoissonRatio!.Value),
        Of("lead crystal, Poisson's ratio", "0.22", "1", FromMemory, Standing.Memory, () => GlassProfile.LeadCrystal.PoissonRatio!.Value),
        Of("borosilicate 3.3, Poisson's ratio", "0.2", "1", DataSheet, Standing.Read, () => GlassProfile.Borosilicate33.PoissonRatio!.Value),
        Of("window soda-lime, stress-optical constant", "2.6", "1/TPa", FromMemory, Standing.Memory, () => GlassProfile.WindowSodaLime.StressOpticalPerTerapascal!.Value),
        Of("soft studio soda-lime, stress-optical constant", "2.6", "1/TPa", FromMemory, Standing.Memory, () => GlassProfile.SoftStudioSodaLime.StressOpticalPerTerapascal!.Value),
        Of("lead crystal, stress-optical constant", "2.5", "1/TPa", FromMemory, Standing.Memory, () => GlassProfile.LeadCrystal.StressOpticalPerTerapascal!.Value),
        Of("borosilicate 3.3, stress-optical constant", "4.0", "1/TPa", DataSheet, Standing.Read, () => GlassProfile.Borosilicate33.StressOpticalPerTerapascal!.Value),
    ];

    /// <summary>A figure quoted, not computed: to the last bit nearly.</summary>
    static Check Of(string what, string published, string unit, string source, Standing standing, Func<double> ours) =>
        new(what, published, unit, 1e-6 * double.Parse(published, System.Globalization.CultureInfo.InvariantCulture), source, standing, ours);
}
