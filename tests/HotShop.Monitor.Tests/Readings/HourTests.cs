using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>Hours: on the spot, after the hourly move, after late data, after a restart, and when readings are let go.</summary>
public sealed class HourTests : IAsyncDisposable
{
    static readonly Instant Eight = OpenStudio.Start;
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task An_hour_is_the_same_to_the_last_bit_before_and_after_the_move_and_a_restart()
    {
        var chance = new Random(7);
        await studio.Send("furnace-1/gas-flow", Every(Seconds(9.7), Eight, Eight + Hours(3)).Select(at => (at, 5 + chance.NextDouble())));
        await studio.Send("shop/meter", Every(Seconds(61), Eight, Eight + Hours(3)).Select((at, i) => (at, 100 + i * 0.1)));
        await studio.Send("furnace-1/flame", Every(Seconds(60), Eight, Eight + Hours(3)).Select((at, i) => (at, i % 7 == 3 ? 0.0 : 1.0)));
        string[] all = ["furnace-1/gas-flow", "shop/meter", "furnace-1/flame"];
        List<HourRow> Rows() => [.. all.SelectMany(c => studio.Hours(c, to: Eight + Hours(3)))];
        var before = Rows();
        studio.Now += Minutes(5);
        await studio.Move();
        Assert.Equal(9, before.Count);
        Assert.Equal(9, studio.Scalar("SELECT count(*) FROM hour"));
        Assert.Equal(before, Rows());
        await studio.Restart();
        Assert.Equal(before, Rows());
        Assert.Empty(studio.Errors);
    }

    [Fact]
    public async Task Practice_8_a_late_reading_changes_the_hours_it_reaches_and_no_other()
    {
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(10), Eight, Eight + Hours(5)));
        await studio.Send("annealer-1/chamber", Steady(500, Seconds(30), Eight, Eight + Hours(5)));
        studio.Now += Minutes(5);
        await studio.Move();
        var before = studio.Hours("furnace-1/gas-flow").ToDictionary(h => h.Hour);
        await studio.Send("furnace-1/gas-flow", OpenStudio.Timed(100, Eight + Hours(2) + Seconds(5)));
        Assert.Equal([Eight + Hours(2)], Changed(before));
        await studio.Send("furnace-1/gas-flow", OpenStudio.Timed(100, Eight + Hours(4) - Seconds(5)));
        await studio.Send("furnace-1/gas-flow", OpenStudio.Timed(100, Eight + Hours(4) - Seconds(4)));
        Assert.Equal([Eight + Hours(2), Eight + Hours(3)], Changed(before));
        Assert.Equal(2, studio.Scalar($"SELECT count(*) FROM dirty WHERE hour < {(Eight + Hours(5)).ToMicroseconds()}"));
        await studio.Move();
        Assert.Equal([Eight + Hours(2), Eight + Hours(3)], Changed(before));
        Assert.Equal(6 * 1.0 + 94 * 10 / 2 / 3600.0, studio.Hours("furnace-1/gas-flow").Single(h => h.Hour == Eight + Hours(2)).Amount, 9);
    }

    List<Instant> Changed(Dictionary<Instant, HourRow> before) =>
        [.. studio.Hours("furnace-1/gas-flow", to: Eight + Hours(5)).Where(h => before[h.Hour] != h).Select(h => h.Hour)];

    [Fact]
    public async Task A_meter_knows_what_passed_in_a_gap_and_spreads_it_over_the_hours()
    {
        await studio.Send("shop/meter", (Eight, 100), (Eight + Minutes(1), 100), (Eight + Minutes(181), 112));
        studio.Now += Minutes(20);
        await studio.Move();
        var hours = studio.Hours("shop/meter");
        Assert.Equal([12 * 59 / 180.0, 4, 4, 12 / 180.0], hours.Select(h => h.Amount), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([3600, 3600, 3600, 60], hours.Select(h => h.CoveredSeconds));
        Assert.Equal([59 * 60, 3600, 3600, 60], hours.Select(h => h.GapSeconds));
    }

    [Fact]
    public async Task A_relay_that_stays_closed_for_hours_is_counted_in_each_of_them()
    {
        await studio.Send("annealer-1/relay", (Eight + Minutes(10), 1));
        studio.Now = Eight + Hours(4) + Minutes(30);
        Assert.Equal(260 / 60.0, studio.Hours("annealer-1/relay").Sum(h => h.Amount), 9);
        await studio.Move();
        await studio.Restart();
        Assert.Equal(260 / 60.0, studio.Hours("annealer-1/relay").Sum(h => h.Amount), 9);
        await studio.Send("annealer-1/relay", (Eight + Minutes(460), 0));
        studio.Now += Hours(1);
        await studio.Move();
        Assert.Equal(450 / 60.0, studio.Hours("annealer-1/relay").Sum(h => h.Amount), 9);
        Assert.All(studio.Hours("annealer-1/relay").Where(h => h.Hour > Eight && h.Hour < Eight + Hours(7)), h => Assert.Equal((1, 3600, 0), (h.Amount, h.CoveredSeconds, h.Count)));
    }

    [Fact]
    public async Task A_state_is_not_held_into_time_that_has_not_come()
    {
        await studio.Send("annealer-1/relay", (Eight, 1));
        studio.Now = Eight + Minutes(15);
        Assert.Equal(0.25, Assert.Single(studio.Hours("annealer-1/relay")).Amount, 12);
    }

    [Fact]
    public async Task A_state_that_no_longer_reports_is_unmeasured_after_three_intervals()
    {
        await studio.Send("furnace-1/flame", (Eight + Minutes(59), 1));
        studio.Now = Eight + Hours(2) + Minutes(5);
        await studio.Move();
        Assert.Equal([60, 120], studio.Hours("furnace-1/flame").Select(h => h.CoveredSeconds));
    }

    [Fact]
    public async Task A_rare_sensor_is_counted_in_the_hours_between_its_samples()
    {
        await studio.Restart(SomeStudio.With("annealer-2", "power", c => c with { IntervalSeconds = 7200 }));
        await studio.Send("annealer-2/power", (Eight + Minutes(30), 2), (Eight + Minutes(270), 6));
        studio.Now += Hours(1);
        await studio.Move();
        Assert.Equal(16, studio.Hours("annealer-2/power").Sum(h => h.Amount), 9);
        Assert.Equal(4 * 3600, studio.Hours("annealer-2/power").Sum(h => h.CoveredSeconds));
    }

    [Fact]
    public async Task Hours_of_a_channel_that_left_the_configuration_wait_until_it_is_back()
    {
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(10), Eight, Eight + Minutes(59)));
        await studio.Restart(SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels.Where(c => c.Id != "gas-flow")] }));
        studio.Now = Eight + Hours(3);
        await studio.Move();
        await studio.Restart(SomeStudio.Configuration);
        await studio.Move();
        Assert.Equal(6 * 59 / 60.0, Assert.Single(studio.Hours("furnace-1/gas-flow")).Amount, 9);
        Assert.Equal(1, studio.Scalar("SELECT count(*) FROM hour"));
    }

    [Fact]
    public async Task An_hour_that_cannot_be_computed_stops_no_other_and_stays_marked()
    {
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(10), Eight, Eight + Minutes(30)));
        await studio.Send("annealer-2/power", Steady(2, Seconds(10), Eight, Eight + Minutes(30)));
        await studio.Writer.Write(scope => scope.Execute("CREATE TRIGGER bad BEFORE INSERT ON hour WHEN NEW.series = 1 BEGIN SELECT RAISE(ABORT, 'no'); END"), TestContext.Current.CancellationToken);
        studio.Now = Eight + Hours(2);
        Assert.Equal(1, await studio.Move());
        Assert.Single(studio.Hours("annealer-2/power"));
        Assert.Contains("furnace-1/gas-flow", Assert.Single(studio.Errors), StringComparison.Ordinal);
        await studio.Writer.Write(scope => scope.Execute("DROP TRIGGER bad"), TestContext.Current.CancellationToken);
        Assert.Equal(1, await studio.Move());
    }

    [Fact]
    public async Task Sequence_numbers_are_never_used_again_after_a_move_and_a_restart()
    {
        await studio.Send("furnace-1/crown", Steady(1150, Seconds(10), Eight, Eight + Minutes(10)));
        // One of the last rows bears an earlier arrival: the clock stepped back while it came.
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1151, Eight + Minutes(11)), arrived: Eight - Hours(5) + Minutes(11));
        studio.Now = Eight + Hours(3);
        await studio.Move();
        await studio.Move();
        var last = studio.Scalar("SELECT value FROM fact WHERE name = 'moved-to'");
        Assert.Equal(62, last);
        await studio.Restart();
        await studio.Send("furnace-1/crown", "1152");
        Assert.Equal(63, studio.Scalar("SELECT max(seq) FROM arrival"));
    }

    [Fact]
    public async Task Readings_older_than_they_are_kept_go_in_pieces_and_their_hours_stay()
    {
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(1), Eight, Eight + Hours(2)));
        studio.Now = Eight + Days(89);
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(10), studio.Now - Minutes(30), studio.Now));
        studio.Now = Eight + Days(90) + Hours(5);
        await studio.Move();
        var before = studio.Hours("furnace-1/gas-flow");
        Assert.Equal(7201, await studio.LetGo());
        Assert.Equal(181, studio.Scalar("SELECT count(*) FROM reading"));
        Assert.Equal(0, studio.Scalar("PRAGMA freelist_count"));
        Assert.Equal(before, studio.Hours("furnace-1/gas-flow"));
    }

    [Fact]
    public async Task Readings_that_no_hour_has_added_up_yet_are_never_let_go()
    {
        await studio.Send("furnace-1/gas-flow", Steady(6, Seconds(10), Eight, Eight + Hours(1)));
        await studio.Restart();
        studio.Now = Eight + Days(200);
        Assert.Equal(0, await studio.LetGo());
        await studio.Move();
        Assert.Equal(6, studio.Hours("furnace-1/gas-flow")[0].Amount, 9);
        Assert.Equal(361, await studio.LetGo());
    }

    [Fact]
    public async Task A_late_meter_reading_does_not_spoil_an_hour_whose_readings_are_gone()
    {
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, 100 + i * 0.1)));
        studio.Now = Eight + Days(90) + Hours(3);
        await studio.Move();
        await studio.LetGo();
        await studio.Send("shop/meter", OpenStudio.Timed(107, Eight + Hours(4)));
        await studio.Move();
        Assert.Equal(6, studio.Hours("shop/meter").Single(h => h.Hour == Eight).Amount, 9);
    }
}
