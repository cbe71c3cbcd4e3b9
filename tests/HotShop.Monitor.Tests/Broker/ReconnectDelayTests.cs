using HotShop.Monitor.Broker;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

public class ReconnectDelayTests
{
    [Fact]
    public void Each_failure_waits_twice_as_long_up_to_a_minute()
    {
        var delay = new ReconnectDelay(() => 0);
        Assert.Equal([1.0, 2, 4, 8, 16, 32, 60, 60], Enumerable.Range(0, 8).Select(_ => delay.AfterFailure().TotalSeconds));
    }

    [Fact]
    public void A_broker_that_accepts_and_drops_at_once_is_not_hammered()
    {
        var delay = new ReconnectDelay(() => 0);
        Assert.Equal([1.0, 2, 4, 8], Enumerable.Range(0, 4).Select(_ => delay.AfterConnection(Duration.FromSeconds(59)).TotalSeconds));
        Assert.Equal(1, delay.AfterConnection(Duration.FromSeconds(60)).TotalSeconds);
    }

    [Fact]
    public void Chance_spreads_the_return_of_many_clients() =>
        Assert.Equal([0.5, 0.75, 1.0], new[] { 1.0, 0.5, 0.0 }.Select(c => new ReconnectDelay(() => c).AfterFailure().TotalSeconds));
}
