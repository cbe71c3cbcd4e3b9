using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class CoupleComparisonTests
{
    static readonly (double, double)[] Pairs = [(1000, 999.5), (1050, 1048.3), (1100, 1097.6), (1150, 1146.2)];

    [Fact]
    public void What_the_better_sensor_may_be_off_by_does_not_average_out()
    {
        var alone = CoupleComparison.Of(Pairs, 0)!.CorrectionAt(1075);
        var doubted = CoupleComparison.Of(Pairs, 0.9)!.CorrectionAt(1075);
        Assert.Equal(alone.Value, doubted.Value, 1e-12);
        Assert.Equal(double.Hypot(alone.StandardUncertainty, 0.9), doubted.StandardUncertainty, 1e-12);
    }

    // Student's t for two degrees of freedom at 95 %: 4.303 (any table of it).
    [Fact]
    public void Few_comparisons_make_a_wide_interval()
    {
        var budget = CoupleComparison.Of(Pairs, 0)!.CorrectionAt(1100);
        Assert.Equal(4.303, budget.HalfWidth95 / budget.StandardUncertainty, 0.0005);
    }

    [Fact]
    public void It_says_where_it_was_compared()
    {
        var comparison = CoupleComparison.Of(Pairs, 0)!;
        Assert.Equal((1000, 1150), (comparison.LowestCelsius, comparison.HighestCelsius));
    }

    [Fact]
    public void One_temperature_makes_no_line()
    {
        Assert.Null(CoupleComparison.Of([(1000, 999), (1000, 999.2), (1000, 999.1)], 0));
        Assert.Null(CoupleComparison.Of([(1000, 999), (1100, 1098)], 0));
        Assert.Null(CoupleComparison.Of([], 0));
    }
}
