using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class LinearFitTests
{
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
    public void A_line_through_equal_values_leaves_nothing_to_explain() => Assert.Equal(1, LinearFit.Line([1, 2, 3], [0, 0, 0])!.RSquared);

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

    // The line of a gas-fired furnace, therms a week over tonnes a week (Energy Monitoring and Target Setting using CUSUM, Cheriton Technology Publications
    // 1989); savings are summed as actual less expected, so that a falling sum is a saving.
    [Fact]
    public void Savings_add_up_week_by_week_against_the_line()
    {
        double[] tonnes = [1000, 1200, 800, 900], therms = [24991, 27500, 21500, 22000];
        var sums = RunningDifference.Of(therms, [.. tonnes.Select(p => 9831 + 15.16 * p)]);
        Assert.Equal([0, -523, -982, -2457], sums.Select(s => Math.Round(s)));
    }
}
