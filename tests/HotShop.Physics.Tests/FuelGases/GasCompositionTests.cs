using HotShop.Physics.FuelGases;
using Xunit;

namespace HotShop.Physics.Tests.FuelGases;

public class GasCompositionTests
{
    static GasComposition Read(params (string Name, double Percent)[] parts) => GasComposition.Read(parts.ToDictionary(p => p.Name, p => p.Percent));

    [Fact]
    public void A_rounded_analysis_is_scaled_to_the_whole()
    {
        var read = Read(("methane", 95.05), ("ethane", 5));
        Assert.Null(read.Problem);
        Assert.Equal(95.05 / 100.05, read.Mixture!.Fraction(GasComponent.Methane), 1e-12);
        Assert.Null(Read(("methane", 99.9002)).Problem);
        Assert.Null(Read(("methane", 100.0998)).Problem);
    }

    [Theory, InlineData(99.8998), InlineData(100.1002), InlineData(0), InlineData(double.NaN)]
    public void What_does_not_add_up_is_refused_with_the_sum(double percent)
    {
        var read = Read(("methane", percent));
        Assert.Null(read.Mixture);
        Assert.NotEmpty(read.Problem!);
        Assert.NotEmpty(read.Advice!);
    }

    [Fact]
    public void An_unknown_component_is_named_and_the_known_ones_offered()
    {
        var read = Read(("methane", 90), ("mystery", 10));
        Assert.Contains("'mystery'", read.Problem, StringComparison.Ordinal);
        Assert.Contains("n-butane", read.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Less_than_nothing_and_what_does_not_burn_are_refused()
    {
        Assert.Contains("ethane is -5", Read(("methane", 105), ("ethane", -5)).Problem, StringComparison.Ordinal);
        Assert.Contains("does not burn", Read(("nitrogen", 100)).Problem, StringComparison.Ordinal);
        Assert.Contains("does not burn", Read(("water", 100)).Problem, StringComparison.Ordinal);
    }
}
