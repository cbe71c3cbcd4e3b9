using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>Lines whose every digit is certified, NIST Statistical Reference Datasets.</summary>
static class RegressionChecks
{
    const string Nist = "NIST StRD, linear regression, certified values";

    static readonly Lazy<LinearFit> Norris = new(() => Fit("norris.csv")), Longley = new(() => Fit("longley.csv"));

    static readonly string[] LongleyValues = ["-3482258.63459582", "15.0618722713733", "-0.0358191792925910", "-2.02022980381683", "-1.03322686717359", "-0.0511041056535807", "1829.15146461355"];

    static readonly string[] LongleyDeviations = ["890420.383607373", "84.9149257747669", "0.0334910077722432", "0.488399681651699", "0.214274163161675", "0.226073200069370", "455.478499142209"];

    static LinearFit Fit(string name)
    {
        var rows = Table.Fields(name).Select(f => Table.Numbers(f)).ToArray();
        return LinearFit.Of([.. rows.Select(r => r.Skip(1).Prepend(1).ToArray())], [.. rows.Select(r => r[0])])!;
    }

    /// <summary>To nine digits, which normal equations would not reach.</summary>
    static Check Certified(string what, string value, Func<double> ours) => new(what, value, "", Math.Abs(double.Parse(value, System.Globalization.CultureInfo.InvariantCulture)) * 1e-9, Nist, Standing.Read, ours);

    public static IEnumerable<Check> All =>
    [
        Certified("Norris, constant", "-0.262323073774029", () => Norris.Value.Coefficients[0]),
        Certified("Norris, slope", "1.00211681802045", () => Norris.Value.Coefficients[1]),
        Certified("Norris, standard deviation of the constant", "0.232818234301152", () => Norris.Value.Coefficient(0).StandardUncertainty),
        Certified("Norris, standard deviation of the slope", "0.429796848199937e-3", () => Norris.Value.Coefficient(1).StandardUncertainty),
        Certified("Norris, residual standard deviation", "0.884796396144373", () => Norris.Value.ResidualStandardDeviation),
        Certified("Norris, R²", "0.999993745883712", () => Norris.Value.RSquared),
        Certified("Norris, residual sum of squares", "26.6173985294224", () => Norris.Value.ResidualSumOfSquares),
        .. LongleyValues.Select((value, i) => Certified($"Longley, coefficient {i}", value, () => Longley.Value.Coefficients[i])),
        .. LongleyDeviations.Select((value, i) => Certified($"Longley, standard deviation of coefficient {i}", value, () => Longley.Value.Coefficient(i).StandardUncertainty)),
        Certified("Longley, residual standard deviation", "304.854073561965", () => Longley.Value.ResidualStandardDeviation),
        Certified("Longley, R²", "0.995479004577296", () => Longley.Value.RSquared),
        Certified("Longley, residual sum of squares", "836424.055505915", () => Longley.Value.ResidualSumOfSquares),
    ];
}
