using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>The flow of the Nile as a level that wanders under noise.</summary>
static class NileChecks
{
    const string Book = "Durbin and Koopman 2001, chapter 2", Apart = "the recursions of Durbin and Koopman 2001, chapter 2, worked apart from this library";

    static readonly Lazy<double?[]> Flow = new(() => [.. Table.Fields("nile.csv").Select(f => (double?)Table.Numbers(f)[1])]);

    static readonly Lazy<LevelCourse> Course = new(() => new LocalLevel(15099, 1469.1).Along(Flow.Value, new Estimate(0, Math.Sqrt(1e7))));

    static readonly Lazy<IReadOnlyList<Estimate>> Smooth = new(() => Course.Value.Smoothed());

    static readonly Lazy<LocalLevel> Likeliest = new(() => LocalLevel.Fit(Flow.Value)!);

    static readonly Lazy<double?[]> Gappy = new(() => [.. Flow.Value.Select((flow, i) => i is >= 20 and < 40 or >= 60 and < 80 ? null : flow)]);

    static double Variance(Estimate of) => of.StandardUncertainty * of.StandardUncertainty;

    static Check Of(string what, string value, Func<double> ours) => Check.Printed(what, value, "", Apart, ours, Standing.Computed);

    static IEnumerable<Check> Row(int place, string level, string variance, string surprise, string surpriseVariance, string filtered, string filteredVariance)
    {
        var (i, year) = (place - 1, 1870 + place);
        return
        [
            Of($"{year}: level expected", level, () => Course.Value.Predicted[i].Value),
            Of($"{year}: variance of the level expected", variance, () => Variance(Course.Value.Predicted[i])),
            Of($"{year}: surprise", surprise, () => Flow.Value[i]!.Value - Course.Value.Predicted[i].Value),
            Of($"{year}: variance of the surprise", surpriseVariance, () => Course.Value.SurpriseVariance(i)),
            Of($"{year}: level filtered", filtered, () => Course.Value.Filtered[i].Value),
            Of($"{year}: variance of the level filtered", filteredVariance, () => Variance(Course.Value.Filtered[i])),
        ];
    }

    public static IEnumerable<Check> All =>
    [
        .. Row(1, "0", "10000000", "1120", "10015099", "1118.31146", "15076.2364"),
        .. Row(2, "1118.31146", "16545.3364", "41.68854", "31644.3364", "1140.10844", "7894.5575"),
        .. Row(3, "1140.10844", "9363.6575", "-177.10844", "24462.6575", "1072.31602", "5779.4974"),
        .. Row(10, "1171.23582", "5536.8878", "-31.23582", "20635.8878", "1162.85482", "4051.2659"),
        .. Row(50, "859.29796", "5501.2579", "-38.29796", "20600.2579", "849.07057", "4032.1579"),
        .. Row(100, "819.63727", "5501.2579", "-79.63727", "20600.2579", "798.37029", "4032.1579"),
        Of("steady gain", "0.26705", () => Variance(Course.Value.Predicted[99]) / Course.Value.SurpriseVariance(99)),
        Of("1871: level smoothed", "1111.2203", () => Smooth.Value[0].Value),
        Of("1871: variance of the level smoothed", "4030.53", () => Variance(Smooth.Value[0])),
        Of("1898: level smoothed", "999.5851", () => Smooth.Value[27].Value),
        Of("1898: variance of the level smoothed", "2326.757", () => Variance(Smooth.Value[27])),
        Of("1899: level smoothed, after the drop", "950.9300", () => Smooth.Value[28].Value),
        Of("1899: variance of the level smoothed", "2326.757", () => Variance(Smooth.Value[28])),
        Of("1920: level smoothed", "834.7633", () => Smooth.Value[49].Value),
        Of("1970: level smoothed", "798.3703", () => Smooth.Value[99].Value),
        Of("1970: variance of the level smoothed", "4032.16", () => Variance(Smooth.Value[99])),
        Of("likeliest noise variance", "15098.52", () => Likeliest.Value.NoiseVariance),
        Of("likeliest variance of a step", "1469.18", () => Likeliest.Value.StepVariance),
        Of("log likelihood of the likeliest, nothing known before", "-632.54563", () => Likeliest.Value.Along(Flow.Value).LogLikelihood),
        new("likeliest noise variance, as published", "15099", "", 1, Book, Standing.Read, () => Likeliest.Value.NoiseVariance),
        new("likeliest variance of a step, as published", "1469.1", "", 0.1, Book, Standing.Read, () => Likeliest.Value.StepVariance),
        Check.Printed("log likelihood with variances 15099 and 1469.1 and a vague belief before (variance 1e7)", "-632.54421", "", "a state space library's own test of the same example",
            () => Course.Value.LogLikelihood),
        new("log likelihood of the likeliest, a vague belief before (variance 1e6)", "-632.5376", "", 0.0005, "a state space library's own test of the same example", Standing.Read,
            () => Likeliest.Value.Along(Flow.Value, new Estimate(0, 1000)).LogLikelihood),
        new("the same with 1891 to 1910 and 1931 to 1950 missing", "-379.9899", "", 0.0005, "a state space library's own test of the same example", Standing.Read,
            () => LocalLevel.Fit(Gappy.Value)!.Along(Gappy.Value, new Estimate(0, 1000)).LogLikelihood),
    ];
}
