using HotShop.Monitor.Sums;
using Xunit;

namespace HotShop.Monitor.Tests.Sums;

public class DoubtTests
{
    [Theory, InlineData(0.5), InlineData(0), InlineData(1)]
    public void A_number_at_its_bound_is_in_doubt_as_much_as_elsewhere(double value) =>
        Assert.Equal(3 * 0.1 / Math.Sqrt(3), Doubt.Of(v => 3 * v[0], new Doubt("share", value, 0.1, Least: 0, Most: 1)).StandardUncertainty, 12);

    [Fact]
    public void A_number_without_room_is_in_no_doubt() =>
        Assert.Equal(0, Doubt.Of(v => v[0], new Doubt("fixed", 1, 0.1, Least: 1, Most: 1)).StandardUncertainty);
}
