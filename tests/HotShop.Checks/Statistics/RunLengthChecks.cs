using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>Mean number of values until a chart alarms, as published by those who first worked it out. Four prints of the time are off by a little more than half of their
/// last digit, three other sources agreeing with us: they carry a wider tolerance.</summary>
static class RunLengthChecks
{
    const string LucasCrosier = "Lucas and Crosier, Technometrics 24 (1982), table 1", Vance = "Vance, J. Quality Technology 18 (1986), table 1", Waldmann = "Waldmann, Technometrics 28 (1986)",
        BrookEvans = "Brook and Evans, Biometrika 59 (1972), 4.3", Manual = "SAS/QC manual 1999, functions for the mean run length",
        Crowder = "Crowder, Technometrics 29 (1987), table 1", LucasSaccucci = "Lucas and Saccucci, Technometrics 32 (1990), table 3";

    static Check OneSided(double k, double h, double shift, string mean, string source, double slack = 0) => Of($"allowance {k}, limit {h}, shift {shift}: upper sum", mean, source, () => Cusum.MeanRun(k, h, shift), slack);

    static Check TwoSided(double shift, string mean, double start = 0, double slack = 0) => Of($"allowance 0.5, limit 4, shift {shift}, start {start}: either sum", mean, LucasCrosier, () => Cusum.MeanRunTwoSided(0.5, 4, shift, start), slack);

    static Check Forgetful(double weight, double limits, double shift, string mean, string source, double slack = 0) => Of($"weight {weight}, limits {limits}, shift {shift}", mean, source, () => Ewma.MeanRun(weight, limits, shift), slack);

    static Check Of(FormattableString what, string mean, string source, Func<double> ours, double slack) =>
        new("mean run of a " + FormattableString.Invariant(what), mean, "", Math.Max(slack, Check.HalfOfLastDigit(mean)), source, Standing.Read, ours);

    public static IEnumerable<Check> All =>
    [
        TwoSided(0, "168"), TwoSided(0.25, "74.2"), TwoSided(0.5, "26.6"), TwoSided(0.75, "13.3"), TwoSided(1, "8.38"), TwoSided(1.5, "4.75"), TwoSided(2, "3.34"), TwoSided(2.5, "2.62"),
        TwoSided(3, "2.19"), TwoSided(4, "1.71"), TwoSided(5, "1.31"),
        TwoSided(0, "149", 2), TwoSided(0.25, "62.7", 2), TwoSided(0.5, "20.1", 2), TwoSided(1, "5.29", 2), TwoSided(2, "2.01", 2), TwoSided(3, "1.32", 2, slack: 0.006), TwoSided(5, "1.01", 2),
        OneSided(0, 10, -0.25, "2071.51", Vance, slack: 0.07), OneSided(0, 10, -0.125, "400.28", Vance), OneSided(0, 10, 0, "124.66", Vance), OneSided(0, 10, 0.125, "59.30", Vance), OneSided(0, 10, 0.25, "36.71", Vance),
        OneSided(0, 10, 0.5, "20.37", Vance), OneSided(0, 10, 0.75, "14.06", Vance), OneSided(0, 10, 1, "10.75", Vance),
        OneSided(0.5, 3, 0, "117.59", BrookEvans, slack: 0.01), OneSided(0.5, 3, 1.5, "3.75", BrookEvans),
        OneSided(0.25, 8, 2.5, "4.1500836225", Manual, slack: 2e-7), Of($"allowance 0.25, limit 8, shift 2.5, start 0.1: upper sum", "4.1061588131", Manual, () => Cusum.MeanRun(0.25, 8, 2.5, 0.1), 2e-7),
        Of($"allowance 0.25, limit 8, shift 2.5: either sum", "4.1500826715", Manual, () => Cusum.MeanRunTwoSided(0.25, 8, 2.5), 2e-6), Forgetful(0.25, 3, 1, "11.154267016", Manual),
        OneSided(0.5, 3, -0.5, "1963", Waldmann), OneSided(0.5, 3, 0.5, "17.35", Waldmann),
        Forgetful(0.5, 2, 0, "26.45", Crowder), Forgetful(0.5, 2, 0.25, "20.12", Crowder), Forgetful(0.5, 2, 0.5, "11.89", Crowder), Forgetful(0.5, 2, 1, "4.91", Crowder), Forgetful(0.5, 2, 2, "1.94", Crowder, slack: 0.006),
        Forgetful(0.5, 2, 4, "1.05", Crowder), Forgetful(0.05, 2, 0, "127.53", Crowder), Forgetful(0.05, 2, 0.25, "43.94", Crowder), Forgetful(0.05, 2, 1, "8.38", Crowder), Forgetful(0.05, 2, 4, "2.15", Crowder),
        Forgetful(0.5, 3.071, 0, "500", LucasSaccucci), Forgetful(0.5, 3.071, 0.25, "255", LucasSaccucci), Forgetful(0.5, 3.071, 1, "17.5", LucasSaccucci), Forgetful(0.5, 3.071, 3, "1.93", LucasSaccucci),
        Forgetful(0.03, 2.437, 0, "500", LucasSaccucci), Forgetful(0.03, 2.437, 0.5, "29.3", LucasSaccucci), Forgetful(0.03, 2.437, 1, "12.6", LucasSaccucci), Forgetful(0.03, 2.437, 5, "2.55", LucasSaccucci),
    ];
}
