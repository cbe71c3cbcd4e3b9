using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Quartz;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Loop;

/// <summary>The turns of the loop, the disk and the calendar.</summary>
public class StudioLoopTests
{
    [Fact]
    public async Task A_stage_that_trips_undoes_no_other_and_the_loop_is_not_called_healthy()
    {
        var tripping = new Tripping();
        await using var studio = OpenStudio.Open(more: s => s.AddSingleton<ITickStage>(tripping));
        await studio.Send("furnace-1/crown", Steady(1150, Seconds(10), OpenStudio.Start, OpenStudio.Start + Seconds(80)));
        await studio.Tick();
        Assert.Single(studio.History.Minutes(studio.Channel("furnace-1/crown"), OpenStudio.Start, studio.Now));
        Assert.False(studio.Health.IsWorking(HealthBoard.Loop));
        Assert.Contains("Tripping", studio.Health.Of(HealthBoard.Loop)!.Detail, StringComparison.Ordinal);
        Assert.Single(studio.Errors);
        tripping.IsMended = true;
        await studio.Tick();
        Assert.True(studio.Health.IsWorking(HealthBoard.Loop));
    }

    sealed class Tripping : ITickStage
    {
        public bool IsMended { get; set; }

        public void Tick(WriteScope scope)
        {
            if (!IsMended) throw new InvalidOperationException("a defect");
        }
    }

    [Fact]
    public async Task The_ballast_comes_back_when_there_is_room_again()
    {
        await using var studio = OpenStudio.Open();
        var ballast = Path.Combine(studio.Plan.DataDirectory, "ballast");
        File.Delete(ballast);
        await studio.Tick();
        await studio.The<IEnumerable<ITickStage>>().OfType<DiskWatch>().Single().Restoring;
        Assert.Equal(1 << 20, new FileInfo(ballast).Length);
        Assert.True(studio.Health.IsWorking(HealthBoard.Disk));
    }

    // Nobody minds a night without upkeep; two in one night, or none for days, would be wrong.
    [Theory, InlineData("Europe/Berlin"), InlineData("America/New_York"), InlineData("Europe/Bucharest"), InlineData("Australia/Lord_Howe"), InlineData("America/Santiago")]
    public void Practice_11_upkeep_comes_once_a_night_through_both_changes_of_the_clock(string zone)
    {
        var cron = new CronExpression(CalendarJobs.NightlyAt, TimeZoneInfo.FindSystemTimeZoneById(zone));
        var at = new DateTimeOffset(2026, 1, 1, 12, 0, 0, TimeSpan.Zero);
        var nights = new List<DateTimeOffset>();
        while (cron.GetNextValidTimeAfter(at) is { Year: 2026 } next) nights.Add(at = next);
        Assert.InRange(nights.Count, 362, 365);
        Assert.All(nights.Zip(nights.Skip(1)), pair => Assert.InRange((pair.Second - pair.First).TotalHours, 22, 49));
    }

    [Fact]
    public async Task Practice_15_a_value_is_good_for_three_intervals_and_then_stale_with_its_age()
    {
        await using var studio = OpenStudio.Open();
        var (crown, door) = (studio.Channel("furnace-1/crown"), studio.Channel("furnace-1/door"));
        await studio.Send("furnace-1/crown", "1150");
        await studio.Send("furnace-1/door", "off");
        Quality Of(ChannelPlan channel) => studio.The<LatestReadings>().QualityOf(channel, studio.Now);
        studio.Now += Seconds(30);
        Assert.Equal((Quality.Good, Quality.Good), (Of(crown), Of(door)));
        studio.Now += Seconds(1);
        Assert.Equal((Quality.Stale, Quality.Good), (Of(crown), Of(door)));
        await studio.Restart();
        Assert.Equal((Quality.Stale, Quality.Good), (Of(crown), Of(door)));
        // A device that speaks only of changes has said nothing for more than a day.
        studio.Now += Hours(26);
        Assert.Equal(Quality.Stale, Of(door));
        Assert.Equal(Hours(26) + Seconds(31), studio.Now - studio.The<LatestReadings>().Of(door)!.At);
    }
}
