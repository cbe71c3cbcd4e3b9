using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Viscosity from composition after Lakatos 1976: glasses of the paper, and made-up ones in which each of its terms counts.</summary>
static class LakatosChecks
{
    const string Transcription = "Lakatos, Johansson, Simmingsköld 1976, table of calculated temperatures, in a transcription";
    const string Apart = "the same coefficients, computed apart in Python";

    public static IEnumerable<Check> All =>
    [
        new("glass S1, temperature at log 2 dPa·s", "1503.7", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S1, 2)),
        new("glass S1, temperature at log 4 dPa·s", "1054.3", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S1, 4)),
        new("glass S1, temperature at log 6 dPa·s", "843.3", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S1, 6)),
        new("glass S7, temperature at log 2 dPa·s", "1465.9", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S7, 2)),
        new("glass S7, temperature at log 4 dPa·s", "1034.0", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S7, 4)),
        new("glass S7, temperature at log 6 dPa·s", "829.9", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S7, 6)),
        new("glass S28, temperature at log 2 dPa·s", "1467.3", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S28, 2)),
        new("glass S28, temperature at log 4 dPa·s", "1039.1", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S28, 4)),
        new("glass S28, temperature at log 6 dPa·s", "837.6", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S28, 6)),
        new("glass S16, temperature at log 2 dPa·s", "1422.7", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S16, 2)),
        new("glass S16, temperature at log 4 dPa·s", "1017.8", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S16, 4)),
        new("glass S16, temperature at log 6 dPa·s", "824.6", "Cel", 1.5, Transcription, Standing.Read, () => Celsius(S16, 6)),
        Check.Printed("six oxides, temperature at log 2 dPa·s", "1466.1143", "Cel", Apart, () => Celsius(Six, 2), Standing.Computed),
        Check.Printed("six oxides, temperature at log 4 dPa·s", "1036.7286", "Cel", Apart, () => Celsius(Six, 4), Standing.Computed),
        Check.Printed("six oxides, temperature at log 6 dPa·s", "825.9143", "Cel", Apart, () => Celsius(Six, 6), Standing.Computed),
        Check.Printed("crystal with additions, temperature at log 2 dPa·s", "1340.7840", "Cel", Apart, () => Celsius(Crystal, 2), Standing.Computed),
        Check.Printed("crystal with additions, temperature at log 4 dPa·s", "913.8160", "Cel", Apart, () => Celsius(Crystal, 4), Standing.Computed),
        Check.Printed("crystal with additions, temperature at log 6 dPa·s", "716.3653", "Cel", Apart, () => Celsius(Crystal, 6), Standing.Computed),
    ];

    static readonly Dictionary<Oxide, double> S1 = new() { [Oxide.SiO2] = 77.02, [Oxide.Al2O3] = 0.19, [Oxide.Na2O] = 12.03, [Oxide.K2O] = 0.13, [Oxide.CaO] = 10.12 };
    static readonly Dictionary<Oxide, double> S7 = new() { [Oxide.SiO2] = 71.41, [Oxide.Al2O3] = 2.21, [Oxide.Na2O] = 12.44, [Oxide.K2O] = 2.6, [Oxide.CaO] = 10.1, [Oxide.MgO] = 0.77 };
    static readonly Dictionary<Oxide, double> S28 = new() { [Oxide.SiO2] = 72.37, [Oxide.Al2O3] = 2.02, [Oxide.Na2O] = 12.87, [Oxide.K2O] = 0.08, [Oxide.CaO] = 11.12, [Oxide.MgO] = 0.65 };
    static readonly Dictionary<Oxide, double> S16 = new() { [Oxide.SiO2] = 69.7, [Oxide.Al2O3] = 2.23, [Oxide.Na2O] = 14.06, [Oxide.K2O] = 0.04, [Oxide.CaO] = 11.05, [Oxide.MgO] = 2.23 };
    static readonly Dictionary<Oxide, double> Six = new() { [Oxide.SiO2] = 70, [Oxide.Na2O] = 12, [Oxide.K2O] = 5, [Oxide.CaO] = 7, [Oxide.MgO] = 4, [Oxide.Al2O3] = 2 };
    static readonly Dictionary<Oxide, double> Crystal = new() { [Oxide.SiO2] = 60, [Oxide.PbO] = 20, [Oxide.K2O] = 8, [Oxide.Na2O] = 4, [Oxide.BaO] = 2.5, [Oxide.ZnO] = 2, [Oxide.B2O3] = 2.5, [Oxide.Li2O] = 1 };

    static double Celsius(Dictionary<Oxide, double> weights, double log) =>
        ((ViscosityAnswer.Known)ViscosityModel.Lakatos1976.Of(GlassComposition.OfWeights(weights))).Curve.CelsiusAt(log);
}
