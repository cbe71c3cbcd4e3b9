using HotShop.Monitor.Readings;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>A thermocouple sent in millivolts, with its terminals measured beside it.</summary>
public sealed class CoupleTests : IAsyncDisposable
{
    // NIST Monograph 175 (1993), type S: 11.951 mV at 1200 °C and 0.143 mV at 25 °C, reference junction at 0 °C, printed to 0.001 mV.
    const double At1200With25 = 11.951 - 0.143;
    readonly OpenStudio studio = OpenStudio.Open();

    Instant Now => studio.Now;

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    Quality Quality => studio.The<LatestReadings>().QualityOf(studio.Channel("furnace-1/couple"), Now);

    [Fact]
    public async Task Millivolts_and_terminals_make_a_temperature_and_both_are_kept()
    {
        await studio.Send("furnace-1/terminal", (Now, 25));
        await studio.Send("furnace-1/couple", (Now + Seconds(1), At1200With25));
        Assert.Equal(1200, Assert.Single(studio.Raw("furnace-1/couple")).Value, 0.1);
        Assert.Equal(3, studio.Scalar("SELECT count(*) FROM arrival"));
        Assert.Equal(Monitor.Readings.Quality.Good, Quality);
        await studio.Restart();
        Assert.Equal(Monitor.Readings.Quality.Good, Quality);
    }

    [Fact]
    public async Task A_backlog_takes_the_terminals_of_its_own_time()
    {
        await studio.Send("furnace-1/terminal", (Now - Hours(5), 25), (Now, 60));
        await studio.Send("furnace-1/couple", OpenStudio.Timed(At1200With25, Now - Hours(4.5)));
        Assert.Equal(1200, Assert.Single(studio.Raw("furnace-1/couple")).Value, 0.1);
    }

    [Fact]
    public async Task Terminals_that_nobody_measured_for_an_hour_give_no_temperature()
    {
        await studio.Send("furnace-1/terminal", (Now, 25));
        await studio.Send("furnace-1/couple", (Now + Minutes(61), At1200With25));
        Assert.Empty(studio.Raw("furnace-1/couple"));
        Assert.Equal(Monitor.Readings.Quality.NoTerminals, Quality);
        await studio.Restart();
        Assert.Equal(Monitor.Readings.Quality.NoTerminals, Quality);
    }

    [Fact]
    public async Task An_open_circuit_gives_no_number_but_says_what_it_is()
    {
        await studio.Send("furnace-1/terminal", (Now, 25));
        await studio.Send("furnace-1/couple", (Now + Seconds(1), At1200With25), (Now + Seconds(11), 75));
        Assert.Equal(1200, Assert.Single(studio.Raw("furnace-1/couple")).Value, 0.1);
        Assert.Equal(Monitor.Readings.Quality.OpenCircuit, Quality);
        studio.Now += Minutes(10);
        Assert.Equal(Monitor.Readings.Quality.Stale, Quality);
    }
}
