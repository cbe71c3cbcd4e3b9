using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class TimeAverageTests
{
    // Worked by hand from the integral of e^(−t/τ): at a span of τ 2/e; of 2τ (1 + e^−2)/2.
    [Theory]
    [InlineData(0, 6, 1)]
    [InlineData(6, 6, 0.735758882)]
    [InlineData(12, 6, 0.567667642)]
    public void An_average_wanders_less_the_longer_it_is(double span, double memory, double share) => Assert.Equal(share, TimeAverage.VarianceShare(span, memory), 9);

    [Fact]
    public void A_long_average_is_one_of_so_many_independent_pieces_each_twice_the_memory_long() =>
        Assert.Equal(2 * 6 / 60_000.0, TimeAverage.VarianceShare(60_000, 6), 1e-7);

    [Fact]
    public void It_is_what_a_wandering_value_does()
    {
        // Steps of a tenth of the memory, each remembering e^−0.1 of the one before; averages of twenty memories' tenths.
        var (random, value, averages) = (new Random(5), 0.0, new List<double>());
        var keeps = Math.Exp(-0.1);
        for (var i = 0; i < 20_000; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < 20; j++) sum += value = keeps * value + Math.Sqrt(1 - keeps * keeps) * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
            averages.Add(sum / 20);
        }
        Assert.Equal(TimeAverage.VarianceShare(2, 1), averages.Average(a => a * a), 0.03);
    }
}
