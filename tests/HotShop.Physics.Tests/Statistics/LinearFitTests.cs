using System.Globalization;
using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class LinearFitTests
{
    // NIST Statistical Reference Datasets (StRD), linear regression, certified values of sets Norris and Longley.
    [Fact]
    public void The_certified_line_of_Norris_comes_out_to_eleven_digits()
    {
        var fit = Certified("norris.csv");
        Same(-0.262323073774029, fit.Coefficients[0], 11);
        Same(1.00211681802045, fit.Coefficients[1], 13);
        Same(0.232818234301152, fit.Coefficient(0).StandardUncertainty, 11);
        Same(0.429796848199937e-3, fit.Coefficient(1).StandardUncertainty, 11);
        Same(0.884796396144373, fit.ResidualStandardDeviation, 11);
        Same(0.999993745883712, fit.RSquared, 13);
        Same(26.6173985294224, fit.ResidualSumOfSquares, 11);
        Assert.Equal(34, fit.DegreesOfFreedom);
    }

    // Its regressors resemble each other so much that normal equations lose all but a few digits.
    [Fact]
    public void The_certified_plane_of_Longley_comes_out_to_eight_digits()
    {
        var fit = Certified("longley.csv");
        double[] values = [-3482258.63459582, 15.0618722713733, -0.0358191792925910, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355];
        double[] deviations = [890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.226073200069370, 455.478499142209];
        for (var i = 0; i < values.Length; i++)
        {
            Same(values[i], fit.Coefficients[i], 8);
            Same(deviations[i], fit.Coefficient(i).StandardUncertainty, 8);
        }
        Same(304.854073561965, fit.ResidualStandardDeviation, 9);
        Same(0.995479004577296, fit.RSquared, 11);
    }

    // Weekly gas of a house over outdoor temperature before its walls were filled (D. Whiteside's measurements): 26 weeks. Line, standard errors
    // and residual deviation as R 4.2.2 gives them; the sums behind them follow, and with them the intervals for a further week, again R's.
    [Fact]
    public void A_further_week_of_Whitesides_house_lies_in_the_interval_that_R_gives()
    {
        const double a = 6.853827699, b = -0.393238822, seA = 0.118423410, seB = 0.019586006, s = 0.281333740;
        // Three points on each side of the mean and residuals of the same deviation give the same sums: n, mean and spread follow from the errors.
        var spread = s * s / seB / seB;
        var mean = Math.Sqrt((seA * seA / s / s - 1.0 / 26) * spread);
        var x = Enumerable.Range(0, 26).Select(i => mean + (i < 13 ? -1 : 1) * Math.Sqrt(spread / 26)).ToArray();
        // Residuals that add to nothing on either side: two per side, and zeros.
        var size = s * Math.Sqrt(24.0 / 4);
        var y = x.Select((value, i) => a + b * value + (i is 0 or 13 ? size : i is 1 or 14 ? -size : 0)).ToArray();
        var line = LinearFit.Line(x, y)!;
        var factor = Quantiles.StudentT(0.975, line.DegreesOfFreedom);
        Assert.Equal(24, line.DegreesOfFreedom);
        var (atZero, atFive) = (line.Next(1, 0), line.Next(1, 5));
        Assert.Equal(6.853828, atZero.Value, 1e-6);
        Assert.Equal(6.223839, atZero.Value - factor * atZero.StandardUncertainty, 1e-5);
        Assert.Equal(7.483817, atZero.Value + factor * atZero.StandardUncertainty, 1e-5);
        Assert.Equal(4.295759, atFive.Value - factor * atFive.StandardUncertainty, 1e-5);
        Assert.Equal(5.479508, atFive.Value + factor * atFive.StandardUncertainty, 1e-5);
    }

    // White's covariance (Econometrica 48, 1980) and Newey and West's (Econometrica 55, 1987) of a mean are sums that can be written down.
    [Fact]
    public void Residuals_that_remember_their_neighbours_widen_the_mean_as_the_formula_says()
    {
        double[] y = [1, 3, 2, 6];
        var mean = LinearFit.Of([.. y.Select(_ => new[] { 1.0 })], y)!;
        // Residuals −2, 0, −1, 3: squares 14; products of neighbours 0, 0, −3.
        Assert.Equal(14.0 / 16 * 4 / 3, mean.NeweyWest([0, 1, 2, 3], 0)[0][0], 1e-12);
        Assert.Equal((14 + 2 * 0.5 * -3) / 16 * 4 / 3, mean.NeweyWest([0, 1, 2, 3], 1)[0][0], 1e-12);
        // A missing day between the last two: no longer neighbours.
        Assert.Equal(14.0 / 16 * 4 / 3, mean.NeweyWest([0, 1, 2, 9], 1)[0][0], 1e-12);
        Assert.Equal(-3 / Math.Sqrt((4 + 0 + 1) * (0 + 1 + 9)), mean.ResidualCorrelation([0, 1, 2, 3]), 1e-12);
    }

    [Fact]
    public void What_does_not_determine_a_line_gives_none()
    {
        Assert.Null(LinearFit.Line([1, 1, 1], [1, 2, 3]));
        Assert.Null(LinearFit.Line([1, 2], [1, 2]));
        Assert.Null(LinearFit.Of([[1, 2, 4], [1, 3, 6], [1, 5, 10], [1, 6, 12]], [1, 2, 3, 4]));
        Assert.Null(LinearFit.Of([], []));
        Assert.Throws<ArgumentException>(() => LinearFit.Line([1, double.NaN, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LinearFit.Line([1, 2, 3], [1, 2]));
    }

    // Energy Monitoring and Target Setting using CUSUM, Cheriton Technology Publications 1989: a gas-fired furnace, therms a week
    // over tonnes a week. The use per tonne follows by arithmetic.
    [Theory]
    [InlineData(500, 34.8)]
    [InlineData(1000, 25.0)]
    [InlineData(1500, 21.7)]
    public void A_furnace_that_burns_as_well_as_ever_needs_more_per_tonne_when_it_melts_less(double tonnes, double thermsPerTonne)
    {
        double[] weeks = [420, 610, 880, 990, 1130, 1270, 1490, 1610];
        var line = LinearFit.Line(weeks, [.. weeks.Select(p => 9831 + 15.16 * p)])!;
        Assert.Equal(thermsPerTonne, line.At(1, tonnes).Value / tonnes, 0.05);
    }

    // The same furnace's line; savings are summed as actual less expected, so that a falling sum is a saving.
    [Fact]
    public void Savings_add_up_week_by_week_against_the_line()
    {
        double[] tonnes = [1000, 1200, 800, 900], therms = [24991, 27500, 21500, 22000];
        var sums = RunningDifference.Of(therms, [.. tonnes.Select(p => 9831 + 15.16 * p)]);
        Assert.Equal([0, -523, -982, -2457], sums.Select(s => Math.Round(s)));
    }

    static LinearFit Certified(string name)
    {
        using var reader = new StreamReader(typeof(LinearFitTests).Assembly.GetManifestResourceStream($"HotShop.Physics.Tests.Statistics.{name}")!);
        var rows = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => l[0] != '#').Skip(1)
            .Select(l => l.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        return LinearFit.Of([.. rows.Select(r => r.Skip(1).Prepend(1).ToArray())], [.. rows.Select(r => r[0])])!;
    }

    static void Same(double expected, double actual, int digits) =>
        Assert.InRange(Math.Abs(actual / expected - 1), 0, Math.Pow(10, -digits));
}
