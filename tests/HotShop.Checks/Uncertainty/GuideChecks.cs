using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using MathNet.Numerics.Statistics;

namespace HotShop.Checks.Uncertainty;

/// <summary>The worked examples of the Guide's annex H. Results as printed there; inputs from memory, confirmed by the results.</summary>
static class GuideChecks
{
    const string Gauge = "JCGM 100:2008 (GUM), H.1", Impedance = "JCGM 100:2008 (GUM), H.2", Thermometer = "JCGM 100:2008 (GUM), H.3";

    /// <summary>Lengths in nm, the measured difference apart as the Guide takes it.</summary>
    static Budget EndGauge { get; } = new(50_000_838,
        Contribution.Certificate("length of the standard", 75, 3, degreesOfFreedom: 18),
        new("comparison, repeated", 5.8, DegreesOfFreedom: 24), new("comparator, random", 3.9, DegreesOfFreedom: 5), new("comparator, systematic", 6.7, DegreesOfFreedom: 8),
        new("difference of expansion", 0.58e-6, Sensitivity: -50_000_623 * -0.1, DegreesOfFreedom: 50),
        new("difference of temperature", 0.029, Sensitivity: -50_000_623 * 11.5e-6, DegreesOfFreedom: 2));

    static readonly double[] Volts = [5.007, 4.994, 5.005, 4.990, 4.999];
    static readonly double[] Milliamperes = [19.663, 19.639, 19.640, 19.685, 19.678];
    static readonly double[] Radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

    /// <summary>V / I times a function of the phase, with the correlations of the five sets of readings.</summary>
    static Budget Of(Func<double, double> phase, Func<double, double> slope)
    {
        var (v, i, phi) = (Volts.Average(), Milliamperes.Average() / 1000, Radians.Average());
        return new Budget(v / i * phase(phi),
                Contribution.Mean("V", Volts, phase(phi) / i), Contribution.Mean("I", Milliamperes, -v / i / i * phase(phi) / 1000),
                Contribution.Mean("phase", Radians, v / i * slope(phi)))
            .Correlated("V", "I", Correlation.Pearson(Volts, Milliamperes))
            .Correlated("V", "phase", Correlation.Pearson(Volts, Radians))
            .Correlated("I", "phase", Correlation.Pearson(Milliamperes, Radians));
    }

    static Budget Resistance => Of(Math.Cos, phi => -Math.Sin(phi));

    static Budget Reactance => Of(Math.Sin, Math.Cos);

    static Budget Modulus => Of(_ => 1, _ => 0);

    static LinearFit Line { get; } = LinearFit.Line(
        [.. new[] { 21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511 }.Select(t => t - 20)],
        [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160])!;

    public static IEnumerable<Check> All =>
    [
        Check.Printed("end gauge, combined standard uncertainty", "32", "nm", Gauge, () => EndGauge.StandardUncertainty),
        Check.Printed("end gauge, part of the standard's length", "25", "nm", Gauge, () => EndGauge.Contributions[0].Effect),
        Check.Printed("end gauge, part of the comparison", "9.7", "nm", Gauge, () => new Budget(0, [.. EndGauge.Contributions.Skip(1).Take(3)]).StandardUncertainty),
        new("end gauge, degrees of freedom of the comparison", "25.6", "", 0.2, Gauge + " (from rounded 9.7 nm)", Standing.Memory, () => new Budget(0, [.. EndGauge.Contributions.Skip(1).Take(3)]).EffectiveDegreesOfFreedom),
        Check.Printed("end gauge, part of the difference of expansion", "2.9", "nm", Gauge, () => EndGauge.Contributions[4].Effect),
        new("end gauge, part of the difference of temperature", "-16.6", "nm", 0.1, Gauge, Standing.Read, () => EndGauge.Contributions[5].Effect),
        new("end gauge, effective degrees of freedom", "16.7", "", 0.1, Gauge, Standing.Read, () => EndGauge.EffectiveDegreesOfFreedom),
        Check.Printed("end gauge, 99 % half-width", "93", "nm", Gauge, () => EndGauge.HalfWidth(0.99)),
        Check.Printed("resistance", "127.732", "Ω", Impedance, () => Resistance.Value),
        Check.Printed("resistance, standard uncertainty of correlated readings", "0.071", "Ω", Impedance, () => Resistance.StandardUncertainty),
        Check.Printed("reactance", "219.847", "Ω", Impedance, () => Reactance.Value),
        new("reactance, standard uncertainty of correlated readings", "0.295", "Ω", 0.001, Impedance + " (from rounded inputs)", Standing.Read, () => Reactance.StandardUncertainty),
        Check.Printed("impedance", "254.260", "Ω", Impedance, () => Modulus.Value),
        Check.Printed("impedance, standard uncertainty of correlated readings", "0.236", "Ω", Impedance, () => Modulus.StandardUncertainty),
        Check.Printed("volts, standard uncertainty of the mean of five", "0.0032", "V", Impedance, () => Contribution.Mean("V", Volts).StandardUncertainty),
        Check.Printed("milliamperes, standard uncertainty of the mean of five", "0.0095", "mA", Impedance, () => Contribution.Mean("I", Milliamperes).StandardUncertainty),
        Check.Printed("correction at 20 °C", "-0.1712", "°C", Thermometer, () => Line.Coefficient(0).Value),
        Check.Printed("correction at 20 °C, standard uncertainty", "0.0029", "°C", Thermometer, () => Line.Coefficient(0).StandardUncertainty),
        Check.Printed("slope of the correction", "0.00218", "", Thermometer, () => Line.Coefficient(1).Value),
        Check.Printed("slope of the correction, standard uncertainty", "0.00067", "", Thermometer, () => Line.Coefficient(1).StandardUncertainty),
        Check.Printed("correlation of constant and slope", "-0.930", "", Thermometer, () => Line.Covariance[0][1] / Line.Coefficient(0).StandardUncertainty / Line.Coefficient(1).StandardUncertainty),
        Check.Printed("scatter about the line", "0.0035", "°C", Thermometer, () => Line.ResidualStandardDeviation),
        Check.Printed("correction at 30 °C", "-0.1494", "°C", Thermometer, () => Line.At(1, 10).Value),
        Check.Printed("correction at 30 °C, standard uncertainty", "0.0041", "°C", Thermometer, () => Line.At(1, 10).StandardUncertainty),
    ];
}
