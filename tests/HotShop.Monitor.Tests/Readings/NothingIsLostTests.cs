using System.Globalization;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>Whatever is sent is stored, or counted with the reason why not.</summary>
public sealed class NothingIsLostTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task Practice_2_every_message_is_stored_or_counted()
    {
        var chance = new Random(5);
        var sent = 0;
        for (var round = 0; round < 5; round++)
        {
            var messages = Enumerable.Range(0, 200).Select(i => (Payload: Payload(chance, i), Retained: chance.Next(9) == 0)).ToList();
            sent += messages.Count;
            await Task.WhenAll(messages.Select(m => studio.Send("furnace-1/crown", m.Payload, m.Retained)));
            await studio.Restart();
            studio.Now += Minutes(40);
            await studio.Move();
        }
        var stored = studio.Scalar("SELECT (SELECT count(*) FROM arrival) + (SELECT count(*) FROM reading)");
        // What is too old is listed as refused as well, so it counts there.
        var counted = new[] { Counters.Duplicate, Counters.Conflict, Counters.Refused, Counters.RetainedWithoutTime }.Sum(studio.Count);
        Assert.Equal(sent, stored + counted);
        Assert.All([Counters.Duplicate, Counters.Conflict, Counters.Refused, Counters.RetainedWithoutTime, Counters.TooOld, Counters.Late, Counters.ImpossibleTime], c => Assert.True(studio.Count(c) > 0, c));
    }

    static string Payload(Random chance, int i) => chance.Next(8) switch
    {
        0 => "nonsense",
        1 => (1000 + i).ToString(CultureInfo.InvariantCulture),
        2 => """{"value":null}""",
        3 => OpenStudio.Timed(1000, OpenStudio.Start - Days(300)),
        4 => OpenStudio.Timed(1000, OpenStudio.Start + Days(300)),
        _ => OpenStudio.Timed(1000 + chance.Next(2), OpenStudio.Start - Minutes(chance.Next(200))),
    };

    [Fact]
    public async Task Practice_13_a_device_whose_clock_is_an_hour_slow_is_kept_with_its_time_and_counted_as_late()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, studio.Now - Hours(1)));
        Assert.Equal([(studio.Now - Hours(1), 1150.0)], studio.Raw("furnace-1/crown"));
        Assert.Equal(1, studio.Count(Counters.Late));
    }

    [Theory]
    [InlineData("""{"value":1150,"time":"2026-03-02T08:00:00"}""", "offset")]
    [InlineData("""{"value":1150,"time":1772438400}""", "seconds and milliseconds look alike")]
    public async Task Practice_13_a_time_that_could_mean_two_things_is_refused_not_guessed(string payload, string says)
    {
        await studio.Send("furnace-1/crown", payload);
        Assert.Empty(studio.Raw("furnace-1/crown"));
        Assert.Contains(says, Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }
}
