using HotShop.Monitor.Readings;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>Minutes are written once at their close; what a restart or a late reading spoils is put right with the hour.</summary>
public sealed class MinuteTests : IAsyncDisposable
{
    static readonly Instant Eight = OpenStudio.Start;
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    IReadOnlyList<MinuteRow> Of(string channel) => studio.History.Minutes(studio.Channel(channel), Eight, Eight + Hours(9));

    async Task Live(string channel, Instant from, Instant to, Func<double, double> value, double step = 10)
    {
        foreach (var at in Every(Seconds(step), from, to))
        {
            studio.Now = at;
            await studio.Send(channel, OpenStudio.Timed(value((at - Eight).TotalSeconds), at));
            await studio.Tick();
        }
    }

    [Fact]
    public async Task A_minute_is_closed_once_shortly_after_its_end()
    {
        await Live("furnace-1/crown", Eight, Eight + Seconds(70), s => 1000 + s);
        var minute = Assert.Single(Of("furnace-1/crown"));
        Assert.Equal((Eight, 1000, 1050, 6), (minute.Minute, minute.Min, minute.Max, minute.Count));
        Assert.Equal(1030, minute.Mean, 9);
        await studio.Writer.Write(scope => scope.Execute("CREATE TRIGGER once BEFORE INSERT ON minute BEGIN SELECT RAISE(ABORT, 'written again'); END"), TestContext.Current.CancellationToken);
        await studio.Tick();
        Assert.Empty(studio.Errors);
    }

    [Fact]
    public async Task A_restart_in_the_middle_of_a_minute_changes_nothing()
    {
        await using var undisturbed = OpenStudio.Open();
        foreach (var at in Every(Seconds(10), Eight, Eight + Minutes(62)))
        {
            foreach (var one in new[] { undisturbed, studio })
            {
                one.Now = at;
                await one.Send("furnace-1/crown", OpenStudio.Timed(1000 + (at - Eight).TotalSeconds % 77, at));
                await one.Send("furnace-1/flame", OpenStudio.Timed((at - Eight).TotalSeconds % 7 < 3 ? 1 : 0, at));
                await one.Tick();
            }
            if ((at - Eight).TotalSeconds % 500 == 130) await studio.Restart();
        }
        undisturbed.Now = studio.Now = Eight + Minutes(63);
        await undisturbed.Move();
        await studio.Move();
        foreach (var channel in new[] { "furnace-1/crown", "furnace-1/flame" })
            Assert.Equal(undisturbed.History.Minutes(undisturbed.Channel(channel), Eight, Eight + Hours(1)), studio.History.Minutes(studio.Channel(channel), Eight, Eight + Hours(1)));
    }

    [Fact]
    public async Task Minutes_of_a_downtime_with_a_backlog_are_filled_with_the_hour()
    {
        await studio.Send("furnace-1/crown", Steady(1150, Seconds(10), Eight, Eight + Minutes(20)));
        Assert.Empty(Of("furnace-1/crown"));
        studio.Now = Eight + Hours(1) + Minutes(3);
        await studio.Move();
        Assert.Equal(21, Of("furnace-1/crown").Count);
    }

    [Fact]
    public async Task A_slow_sensor_gets_the_mean_over_the_minute_once_its_next_sample_has_come()
    {
        await Live("furnace-1/gas-flow", Eight, Eight + Minutes(65), s => s / 60, step: 30);
        studio.Now += Minutes(3);
        await studio.Move();
        // Flow grows by 1 m³/h a minute: the mean of minute n is n + 0.5.
        Assert.Equal(Enumerable.Range(0, 60).Select(n => n + 0.5), Of("furnace-1/gas-flow").Take(60).Select(m => m.Mean), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public async Task A_state_that_changes_within_a_minute_has_the_mean_of_its_time()
    {
        await studio.Send("annealer-1/relay", (Eight - Minutes(5), 1), (Eight + Seconds(45), 0));
        studio.Now = Eight + Seconds(71);
        await studio.Tick();
        Assert.Equal(0.75, Assert.Single(Of("annealer-1/relay")).Mean, 12);
    }
}
