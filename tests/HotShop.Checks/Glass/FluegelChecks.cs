using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Viscosity from composition after Fluegel 2007: the paper's own glasses, and made-up ones in which each of its terms counts.</summary>
static class FluegelChecks
{
    const string Transcription = "Fluegel, Glass Technol. 48 (2007) 13, ";
    const string Apart = "the same coefficients, computed apart in Python";

    public static IEnumerable<Check> All => [.. Paper, .. Apartly, .. Studio];

    static IEnumerable<Check> Paper =>
    [
        new("standard glass 710A, temperature at log 2.5 dPa·s", "1314", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G710A, 2.5)),
        new("standard glass 710A, temperature at log 7.6 dPa·s", "729", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G710A, 7.6)),
        new("standard glass 710A, temperature at log 13 dPa·s", "551", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G710A, 13)),
        new("standard glass 717A, temperature at log 2.5 dPa·s", "1378", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G717A, 2.5)),
        new("standard glass 717A, temperature at log 7.6 dPa·s", "731", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G717A, 7.6)),
        new("standard glass 717A, temperature at log 13 dPa·s", "520", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G717A, 13)),
        new("standard glass 711, temperature at log 2.5 dPa·s", "1172", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G711, 2.5)),
        new("standard glass 711, temperature at log 7.6 dPa·s", "614", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G711, 7.6)),
        new("standard glass 711, temperature at log 13 dPa·s", "445", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(G711, 13)),
        new("standard glass DGG I, temperature at log 2.5 dPa·s", "1303", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(GDGG1, 2.5)),
        new("standard glass DGG I, temperature at log 7.6 dPa·s", "715", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(GDGG1, 7.6)),
        new("standard glass DGG I, temperature at log 13 dPa·s", "535", "Cel", 1, Transcription + "table 12, model column", Standing.Read, () => Celsius(GDGG1, 13)),
        new("container glass, temperature at log 2 dPa·s", "1468", "Cel", 1.5, Transcription + "table 2, this work", Standing.Read, () => Celsius(GCO, 2)),
        new("standard glass 710A, temperature at log 2 dPa·s", "1457", "Cel", 1.5, Transcription + "table 2, this work", Standing.Read, () => Celsius(G710A, 2)),
        new("standard glass 717A, temperature at log 2 dPa·s", "1526", "Cel", 1.5, Transcription + "table 2, this work", Standing.Read, () => Celsius(G717A, 2)),
        new("standard glass 711, temperature at log 2 dPa·s", "1310", "Cel", 1.5, Transcription + "table 2, this work", Standing.Read, () => Celsius(G711, 2)),
        new("standard glass DGG I, temperature at log 2 dPa·s", "1446", "Cel", 1.5, Transcription + "table 2, this work", Standing.Read, () => Celsius(GDGG1, 2)),
    ];

    static IEnumerable<Check> Apartly =>
    [
        .. Made("potash, lime and magnesia", new() { [Oxide.SiO2] = 70, [Oxide.K2O] = 20, [Oxide.CaO] = 5, [Oxide.MgO] = 5 }, "1353.280", "749.528", "573.739"),
        .. Made("three alkalis", new() { [Oxide.SiO2] = 70, [Oxide.Li2O] = 15, [Oxide.Na2O] = 10, [Oxide.K2O] = 5 }, "1075.924", "490.697", "384.219"),
        .. Made("boron with alkalis, lime and alumina", new() { [Oxide.SiO2] = 65, [Oxide.B2O3] = 12, [Oxide.Na2O] = 8, [Oxide.K2O] = 3, [Oxide.Li2O] = 4, [Oxide.CaO] = 5, [Oxide.Al2O3] = 3 }, "1152.304", "661.140", "500.110"),
        .. Made("alumina with alkalis, lime and magnesia", new() { [Oxide.SiO2] = 66, [Oxide.Al2O3] = 6, [Oxide.Na2O] = 12, [Oxide.K2O] = 4, [Oxide.Li2O] = 3, [Oxide.MgO] = 4, [Oxide.CaO] = 5 }, "1313.587", "687.236", "499.240"),
        .. Made("soda, lime and magnesia", new() { [Oxide.SiO2] = 68, [Oxide.Na2O] = 14, [Oxide.CaO] = 10, [Oxide.MgO] = 8 }, "1260.860", "706.324", "541.157"),
        .. Made("small additions", new() { [Oxide.SiO2] = 69.5, [Oxide.Na2O] = 12, [Oxide.CaO] = 6, [Oxide.BaO] = 5, [Oxide.SrO] = 3, [Oxide.ZnO] = 2, [Oxide.TiO2] = 1.5, [Oxide.Fe2O3] = 0.5, [Oxide.SO3] = 0.5 }, "1222.478", "714.242", "545.733"),
        .. Made("lead", new() { [Oxide.SiO2] = 65, [Oxide.PbO] = 22, [Oxide.K2O] = 8, [Oxide.Na2O] = 5 }, "1012.773", "530.187", "398.749"),
        .. Made("lithia and lime", new() { [Oxide.SiO2] = 70, [Oxide.Li2O] = 12, [Oxide.CaO] = 10, [Oxide.Na2O] = 8 }, "1138.606", "581.530", "393.808"),
    ];

    static IEnumerable<Check> Studio =>
    [
        new("soft studio soda-lime, melting point", "1363.33", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.SoftStudioSodaLime.MeltingPointCelsius),
        new("soft studio soda-lime, working point", "947.43", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.SoftStudioSodaLime.WorkingPointCelsius),
        new("soft studio soda-lime, softening point", "659.28", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.SoftStudioSodaLime.SofteningPointCelsius),
        new("soft studio soda-lime, annealing point", "495.24", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.SoftStudioSodaLime.AnnealingPointCelsius),
        new("soft studio soda-lime, strain point", "469.32", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.SoftStudioSodaLime.StrainPointCelsius),
        new("window soda-lime, melting point", "1450.02", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.WindowSodaLime.MeltingPointCelsius),
        new("lead crystal, melting point", "1421.97", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.LeadCrystal.MeltingPointCelsius),
        new("window soda-lime, working point", "1024.54", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.WindowSodaLime.WorkingPointCelsius),
        new("lead crystal, working point", "978.42", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.LeadCrystal.WorkingPointCelsius),
        new("window soda-lime, softening point", "723.19", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.WindowSodaLime.SofteningPointCelsius),
        new("lead crystal, softening point", "656.05", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.LeadCrystal.SofteningPointCelsius),
        new("window soda-lime, annealing point", "549.18", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.WindowSodaLime.AnnealingPointCelsius),
        new("lead crystal, annealing point", "466.68", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.LeadCrystal.AnnealingPointCelsius),
        new("window soda-lime, strain point", "521.51", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.WindowSodaLime.StrainPointCelsius),
        new("lead crystal, strain point", "436.36", "Cel", 0.01, Apart, Standing.Computed, () => GlassProfile.LeadCrystal.StrainPointCelsius),
    ];

    static readonly Dictionary<Oxide, double> G710A = new() { [Oxide.SiO2] = 71.43, [Oxide.Al2O3] = 1.31, [Oxide.Na2O] = 8.25, [Oxide.K2O] = 6.27, [Oxide.CaO] = 9.62, [Oxide.TiO2] = 0.32, [Oxide.ZnO] = 2.81 };
    static readonly Dictionary<Oxide, double> G717A = new() { [Oxide.SiO2] = 72.25, [Oxide.Al2O3] = 2.19, [Oxide.Na2O] = 1.03, [Oxide.K2O] = 5.42, [Oxide.B2O3] = 16.97, [Oxide.Li2O] = 2.14 };
    static readonly Dictionary<Oxide, double> G711 = new() { [Oxide.SiO2] = 71.28, [Oxide.Al2O3] = 0.51, [Oxide.Na2O] = 3.76, [Oxide.K2O] = 5.55, [Oxide.PbO] = 18.9 };
    static readonly Dictionary<Oxide, double> GDGG1 = new() { [Oxide.SiO2] = 70.94, [Oxide.Al2O3] = 0.72, [Oxide.Na2O] = 14.34, [Oxide.K2O] = 0.21, [Oxide.MgO] = 6.16, [Oxide.CaO] = 7.13, [Oxide.SO3] = 0.32, [Oxide.Fe2O3] = 0.07, [Oxide.TiO2] = 0.1 };
    static readonly Dictionary<Oxide, double> GCO = new() { [Oxide.SiO2] = 74.41, [Oxide.Al2O3] = 0.75, [Oxide.Na2O] = 12.9, [Oxide.K2O] = 0.19, [Oxide.MgO] = 0.3, [Oxide.CaO] = 11.27, [Oxide.SO3] = 0.16, [Oxide.Fe2O3] = 0.01, [Oxide.TiO2] = 0.01 };

    static IEnumerable<Check> Made(string name, Dictionary<Oxide, double> moles, string log25, string log76, string log13) =>
    [
        Check.Printed($"{name}, temperature at log 2.5 dPa·s", log25, "Cel", Apart, () => Celsius(moles, 2.5), Standing.Computed),
        Check.Printed($"{name}, temperature at log 7.6 dPa·s", log76, "Cel", Apart, () => Celsius(moles, 7.6), Standing.Computed),
        Check.Printed($"{name}, temperature at log 13 dPa·s", log13, "Cel", Apart, () => Celsius(moles, 13), Standing.Computed),
    ];

    static double Celsius(Dictionary<Oxide, double> moles, double log) =>
        ((ViscosityAnswer.Known)ViscosityModel.Fluegel2007.Of(GlassComposition.OfMoles(moles))).Curve.CelsiusAt(log);
}
