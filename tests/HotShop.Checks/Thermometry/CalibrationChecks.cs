using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>What calibrations and budgets of a couple come to.</summary>
static class CalibrationChecks
{
    const string H3 = "JCGM 100:2008 (GUM), H.3, calibration of a thermometer";
    const string Worked = "IEC 60584-1 class and the sensitivities of NIST Monograph 175, limits divided by √3 (GUM 4.3.7), summed by hand";

    // Readings of the thermometer in °C and the corrections observed, table H.6 of the Guide.
    static readonly (double Reading, double Correction)[] observed =
    [
        (21.521, -0.171), (22.012, -0.169), (22.512, -0.166), (23.003, -0.159), (23.507, -0.164), (23.999, -0.165), (24.513, -0.156), (25.002, -0.157), (25.503, -0.159),
        (26.010, -0.161), (26.511, -0.160),
    ];

    static CoupleComparison Compared => CoupleComparison.Of([.. observed.Select(o => (o.Reading, o.Reading + o.Correction))], referenceStandardCelsius: 0)!;

    /// <summary>A couple of type S, class 2, read by an input good to 10 µV with terminals known to 1 °C, that may have drifted by 3 °C.</summary>
    static TemperatureUncertainty TypeS => new() { Couple = ThermocoupleType.S, Class = ToleranceClass.Find("iec-2"), InputMicrovolts = 10, TerminalsCelsius = 1, DriftCelsius = 3 };

    static TemperatureUncertainty TypeK => new() { Couple = ThermocoupleType.K, Class = ToleranceClass.Find("iec-2") };

    public static IEnumerable<Check> All =>
    [
        Check.Printed("correction at 30 °C by the line of eleven comparisons", "-0.1494", "°C", H3, () => Compared.CorrectionAt(30).Value),
        Check.Printed("its standard uncertainty", "0.0041", "°C", H3, () => Compared.CorrectionAt(30).StandardUncertainty),
        Check.Printed("correction at 20 °C", "-0.1712", "°C", H3, () => Compared.CorrectionAt(20).Value),
        Check.Printed("standard uncertainty of the correction at 20 °C", "0.0029", "°C", H3, () => Compared.CorrectionAt(20).StandardUncertainty),
        Check.Printed("scatter about the line", "0.0035", "°C", H3, () => Compared.ScatterCelsius),
        Check.Printed("standard uncertainty of type S at 1150 °C: class 2, input 10 µV, terminals 1 °C, drift 3 °C", "2.46", "°C", Worked, () => TypeS.StandardCelsius(1150, 25) ?? double.NaN, Standing.Computed),
        Check.Printed("of it by the class", "1.66", "°C", Worked, () => Part("class of the wire"), Standing.Computed),
        Check.Printed("of it by the input", "0.48", "°C", Worked, () => Part("input"), Standing.Computed),
        Check.Printed("of it by the terminals", "0.29", "°C", Worked, () => Part("terminals"), Standing.Computed),
        Check.Printed("of it by drift", "1.73", "°C", Worked, () => Part("drift"), Standing.Computed),
        Check.Printed("standard uncertainty of type K, class 2, at 1150 °C by its class alone", "4.98", "°C", Worked, () => TypeK.StandardCelsius(1150, 25) ?? double.NaN, Standing.Computed),
    ];

    static double Part(string name) => TypeS.At(1150, 25)!.Contributions.Single(c => c.Name == name).StandardUncertainty;
}
