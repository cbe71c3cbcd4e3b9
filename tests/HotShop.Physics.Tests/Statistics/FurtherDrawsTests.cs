using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Statistics;

public class FurtherDrawsTests
{
    // By hand: 10, 12, 14 have the mean 12 and s = 2; Student's t for 95 % and 2 degrees of freedom is 4.303 in every table.
    [Theory]
    [InlineData(1, 12, 4.303 * 2 * 1.154700538)]   // √(1 + 1/3)
    [InlineData(6, 72, 4.303 * 2 * 4.242640687)]   // √(6 + 36/3)
    [InlineData(0, 0, 0)]
    public void A_sum_of_days_to_come_is_as_sure_as_the_days_were_alike(double count, double value, double half)
    {
        var sum = FurtherDraws.Sum([10, 12, 14], count);
        Assert.Equal(value, sum.Value, 1e-12);
        Assert.Equal(half, sum.HalfWidth95, half * 1e-4);
    }

    [Fact]
    public void Nineteen_sums_in_twenty_lie_where_they_were_foretold()
    {
        var random = new Random(7);
        var inside = 0;
        const int tries = 20_000;
        for (var i = 0; i < tries; i++)
        {
            var draws = Enumerable.Range(0, 13).Select(_ => MathNet.Numerics.Distributions.Normal.Sample(random, 50, 6)).ToList();
            var foretold = FurtherDraws.Sum(draws[..6], 7);
            if (Math.Abs(draws[6..].Sum() - foretold.Value) <= foretold.HalfWidth95) inside++;
        }
        Assert.InRange(inside / (double)tries, 0.945, 0.955);
    }

    [Fact]
    public void One_draw_tells_nothing_of_the_next() => Assert.Throws<ArgumentException>(() => FurtherDraws.Sum([3], 1));
}
