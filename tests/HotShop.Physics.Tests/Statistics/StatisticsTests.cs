using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class StatisticsTests
{
    [Fact]
    public void Limits_without_more_knowledge_are_a_rectangle() => Assert.Equal(1.66, Estimate.WithinLimits(1150, 2.875).StandardUncertainty, 0.005);

    [Fact]
    public void A_95_percent_interval_is_two_standard_uncertainties_each_way()
    {
        var mass = new Estimate(80, 2);
        Assert.Equal((76.08, 83.92), (Math.Round(mass.Low95, 2), Math.Round(mass.High95, 2)));
    }

    [Fact]
    public void Relative_uncertainties_of_a_product_and_a_quotient_add_in_quadrature()
    {
        var (a, b) = (Estimate.Relative(-12, 0.03), Estimate.Relative(5, 0.04));
        Assert.Equal(0.05, (a * b).RelativeUncertainty, 1e-12);
        Assert.Equal(0.05, (a / b).RelativeUncertainty, 1e-12);
        Assert.Equal(-2.4, (a / b).Value, 1e-12);
        Assert.Equal(double.Hypot(0.36, 0.2), (a - b).StandardUncertainty, 1e-12);
    }

    // The standard normal above 0 has mean √(2/π) and variance 1 − 2/π.
    [Fact]
    public void Half_a_normal_has_its_known_mean_and_variance()
    {
        var (mean, variance) = TruncatedNormal.Above(0);
        Assert.Equal(Math.Sqrt(2 / Math.PI), mean, 1e-9);
        Assert.Equal(1 - 2 / Math.PI, variance, 1e-9);
    }

    // φ(1) = 0.24197072 and 1 − Φ(1) = 0.15865525, as every table of the normal distribution prints them.
    [Fact]
    public void A_tail_of_a_normal_has_the_mean_and_variance_of_the_printed_tables()
    {
        var (mean, variance) = TruncatedNormal.Above(1);
        Assert.Equal(0.24197072 / 0.15865525, mean, 1e-7);
        Assert.Equal(1 + 1.5251353 - 1.5251353 * 1.5251353, variance, 1e-6);
    }

    [Fact]
    public void A_level_without_noise_of_its_own_is_the_mean_of_what_was_seen()
    {
        double?[] values = [3, 5, null, 4, 8];
        var course = new LocalLevel(4, 0).Along(values);
        Assert.Equal(5, course.Filtered[4].Value, 9);
        Assert.Equal(1, course.Filtered[4].StandardUncertainty, 9);
        Assert.All(course.Smoothed(), level => Assert.Equal(5, level.Value, 9));
        Assert.Equal(course.Filtered[1], course.Filtered[2]);
        Assert.Equal(course.Filtered[4], course.Forecast);
    }

    [Fact]
    public void A_step_before_the_first_value_is_not_known_and_a_belief_counts_as_a_value()
    {
        var late = new LocalLevel(4, 1).Along([null, null, 7, 9]);
        Assert.Equal((2, 7.0, 2.0), (late.First, late.Filtered[2].Value, late.Filtered[2].StandardUncertainty));
        Assert.Equal(Math.Sqrt(5), late.Predicted[3].StandardUncertainty, 12);
        var believed = new LocalLevel(4, 1).Along([9], new Estimate(5, 2));
        Assert.Equal((0, 7.0), (believed.First, believed.Filtered[0].Value));
        Assert.Equal(Math.Sqrt(3), believed.Forecast.StandardUncertainty, 12);
        Assert.Throws<ArgumentException>(() => new LocalLevel(4, 1).Along([null, null]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LocalLevel(0, 1));
    }

    [Fact]
    public void Variances_cannot_be_told_from_two_values_or_from_equal_ones()
    {
        Assert.Null(LocalLevel.Fit([1, 2]));
        Assert.Null(LocalLevel.Fit([2, null, 2, 2, 2]));
        Assert.NotNull(LocalLevel.Fit([1, 2, 4]));
    }

    [Fact]
    public void A_sum_never_alarms_where_its_values_lie_far_below()
    {
        Assert.Equal(double.PositiveInfinity, Cusum.MeanRun(0.5, 4, -5));
        Assert.Equal(Cusum.MeanRun(0.5, 4, 5), Cusum.MeanRunTwoSided(0.5, 4, 5), 6);
        Assert.True(new Cusum(0, 0.5, 4).IsAlarm(new CusumSums(0, 4.1)));
        Assert.False(new Cusum(0, 0.5, 4).IsAlarm(new CusumSums(4, 4)));
    }

    [Fact]
    public void Wider_nests_narrower_and_not_the_other_way()
    {
        double[] x = [1, 2, 3, 4, 5], y = [1, 3, 2, 5, 4];
        var (line, mean) = (LinearFit.Line(x, y)!, LinearFit.Of([.. x.Select(_ => new[] { 1.0 })], y)!);
        // One further coefficient: F is the square of the slope over its uncertainty.
        var slope = line.Coefficient(1);
        Assert.Equal(Math.Pow(slope.Value / slope.StandardUncertainty, 2), NestedFits.Of(mean, line).F, 9);
        Assert.Throws<ArgumentOutOfRangeException>(() => NestedFits.Of(line, mean));
        Assert.Equal(1, new NestedFits(-1e-12, 1, 3).Chance);
    }

    [Fact]
    public void The_same_seed_draws_a_sample_alike()
    {
        double[] sample = [3, 5, 8, 13, 21, 34, 55, 89, 144, 233, 377, 610];
        Draws Drawn(int seed) => Bootstrap.Of(sample, s => s.Average(), 2000, seed);
        Assert.Equal(Drawn(5).Interval(), Drawn(5).Interval());
        Assert.NotEqual(Drawn(5).Interval(), Drawn(6).Interval());
        Assert.InRange(sample.Average(), Drawn(5).Interval().Low, Drawn(5).Interval().High);
        Assert.Throws<ArgumentOutOfRangeException>(() => Bootstrap.Of(Array.Empty<double>(), s => s.Count, 2000, 1));
    }

    // 1 to 100: ninety of them inside leaves five on each side.
    [Fact]
    public void An_interval_leaves_as_many_below_as_above()
    {
        var draws = new Draws([.. Enumerable.Range(1, 101).Select(i => (double)i)]);
        Assert.Equal((6, 96), draws.Interval(0.9));
        Assert.Equal(51, draws.Mean);
        Assert.Equal((1, 4), new Draws([1, 2, 3, 4, 9, 20]).ShortestInterval(0.6));
        Assert.Equal(Math.Sqrt(0.5), new Draws([1, 2]).StandardUncertainty, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Draws([1]));
    }
}
