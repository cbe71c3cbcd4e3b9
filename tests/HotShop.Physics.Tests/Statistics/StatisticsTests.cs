using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class StatisticsTests
{
    // Tables of the normal and of Student's t distribution (from memory); t 99 % with 16 degrees of freedom is printed 2.92 in JCGM 100 H.1.
    [Fact]
    public void Factors_are_those_of_the_printed_tables()
    {
        Assert.Equal(1.959964, Quantiles.Normal95, 5e-7);
        Assert.Equal(2.92, Quantiles.StudentT(0.995, 16), 0.005);
        Assert.Equal(2.776, Quantiles.StudentT(0.975, 4), 0.0005);
    }

    // JCGM 100:2008 (GUM), H.1: terms 25, 9.7, 2.9, 16.7 nm give 31.7 (printed 32); 99 % half-width 92.6 (printed 93).
    [Fact]
    public void The_guides_end_gauge_comes_out()
    {
        var length = new Estimate(50_000_838, 25) + new Estimate(0, 9.7) + new Estimate(0, 2.9) + new Estimate(0, 16.7);
        Assert.Equal(31.7, length.StandardUncertainty, 0.05);
        Assert.Equal(92.6, Quantiles.StudentT(0.995, 16) * length.StandardUncertainty, 0.2);
    }

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
