using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>Samples drawn again from themselves, and sums of savings against a furnace's line.</summary>
static class ResamplingChecks
{
    const string Mice = "Efron and Tibshirani, An Introduction to the Bootstrap, 1993, table 2.2 (endlessly many draws)",
        Furnace = "Energy Monitoring and Target Setting using CUSUM, Cheriton Technology Publications 1989, a furnace's line";

    /// <summary>Days that treated mice lived.</summary>
    static readonly double[] Days = [94, 197, 16, 38, 99, 141, 23];

    static readonly double[] Weeks = [420, 610, 880, 990, 1130, 1270, 1490, 1610];

    static readonly Lazy<LinearFit> Line = new(() => LinearFit.Line(Weeks, [.. Weeks.Select(p => 9831 + 15.16 * p)])!);

    static Check Drawn(string what, string value, double tolerance, Func<IReadOnlyList<double>, double> figure) =>
        new(what, value, "d", tolerance, Mice, Standing.Memory, () => Bootstrap.Of(Days, figure, 20_000, seed: 1).StandardUncertainty);

    static Check PerTonne(double tonnes, string therms) =>
        Check.Printed($"therms per tonne at {tonnes} t a week", therms, "therm/t", Furnace, () => Line.Value.At(1, tonnes).Value / tonnes);

    public static IEnumerable<Check> All =>
    [
        Drawn("mice, standard error of the mean by drawing", "23.36", 0.3, days => days.Average()),
        Drawn("mice, standard error of the median by drawing", "37.83", 0.5, MathNet.Numerics.Statistics.Statistics.Median),
        PerTonne(500, "34.8"), PerTonne(1000, "25.0"), PerTonne(1500, "21.7"),
    ];
}
