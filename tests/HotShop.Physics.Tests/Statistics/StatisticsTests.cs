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
}
