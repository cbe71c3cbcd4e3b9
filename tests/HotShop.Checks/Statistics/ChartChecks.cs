using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>Control charts: the worked examples of the NIST/SEMATECH e-Handbook.</summary>
static class ChartChecks
{
    const string CusumPage = "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3", EwmaPage = "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4";

    static readonly Cusum Sums = new(325, 0.3175, 4.1959);
    internal static readonly double[] Means =
    [
        324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
    ];

    static readonly Ewma Mean = new(50, 2.0539, 0.3, 3);
    static readonly double[] Values = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    static readonly string[] Averages =
    [
        "50.60", "49.52", "50.56", "50.18", "50.16", "49.21", "49.75", "49.85", "50.26", "50.33", "50.11", "49.36", "49.52", "50.05", "49.38", "49.92", "50.73", "51.23", "51.94", "51.99",
    ];

    static IEnumerable<Check> Above(int from, params string[] sums) =>
        sums.Select((sum, i) => Check.Printed($"cumulative sum above the target, group {from + i}", sum, "", CusumPage, () => Sums.Along(Means)[from + i - 1].Above));

    static IEnumerable<Check> Below(int from, params string[] sums) =>
        sums.Select((sum, i) => Check.Printed($"cumulative sum below the target, group {from + i}", sum, "", CusumPage, () => Sums.Along(Means)[from + i - 1].Below));

    public static IEnumerable<Check> All =>
    [
        .. Above(5, "0.0325"), .. Above(12, "0", "3.0075", "4.9400", "7.4475", "10.6300", "11.9875", "14.4450", "16.0025", "19.0350"),
        .. Below(2, "0.0075"), .. Below(4, "0.3325", "0", "0", "0.5575", "0.7150", "0.1725", "0.2550", "0.3125", "0"),
        Check.Printed("first group with an alarm", "14", "", CusumPage, () => 1 + Sums.Along(Means).TakeWhile(s => !Sums.IsAlarm(s)).Count()),
        Check.Printed("groups with an alarm", "7", "", CusumPage, () => Sums.Along(Means).Count(Sums.IsAlarm)),
        .. Averages.Select((mean, i) => Check.Printed($"mean that forgets, value {i + 1}", mean, "", EwmaPage, () => Mean.Along(Values)[i])),
        Check.Printed("upper limit", "52.5884", "", EwmaPage, () => Mean.Target + Mean.Limit),
        new("lower limit", "47.4115", "", 0.0001, EwmaPage, Standing.Read, () => Mean.Target - Mean.Limit),
        Check.Printed("values with an alarm", "0", "", EwmaPage, () => Mean.Along(Values).Count(Mean.IsAlarm)),
    ];
}
