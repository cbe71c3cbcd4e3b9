using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Loop;

/// <summary>A clock that steps, or that is behind what is stored, is said to be in trouble; one that runs fast on purpose is not.</summary>
public sealed class ClockWatchTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();
    readonly HealthBoard health = new();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    async Task Tick(ClockWatch watch) => await studio.Writer.Write(scope => { watch.Tick(scope); return true; }, TestContext.Current.CancellationToken);

    PartHealth Clock => health.Of(HealthBoard.Clock)!;

    [Theory, InlineData(-1), InlineData(1)]
    public async Task Practice_12_a_clock_that_is_set_by_an_hour_is_noticed_and_forgotten_after_an_hour(int hours)
    {
        var clock = new SteppingClock(OpenStudio.Start);
        var watch = new ClockWatch(studio.Store, health, clock, LoopPace.ForSpeed(1));
        for (var i = 0; i < 5; i++) { await Tick(watch); clock.Run(Seconds(1)); }
        Assert.True(Clock.IsWorking);
        clock.Step(Hours(hours));
        await Tick(watch);
        Assert.False(Clock.IsWorking);
        Assert.Contains($"stepped by {hours * 3600} s", Clock.Detail, StringComparison.Ordinal);
        clock.Run(Minutes(59));
        await Tick(watch);
        Assert.False(Clock.IsWorking);
        clock.Run(Minutes(2));
        await Tick(watch);
        Assert.True(Clock.IsWorking);
    }

    [Fact]
    public async Task A_clock_that_slews_slowly_is_left_alone()
    {
        var clock = new SteppingClock(OpenStudio.Start);
        var watch = new ClockWatch(studio.Store, health, clock, LoopPace.ForSpeed(1));
        for (var i = 0; i < 200; i++) { await Tick(watch); clock.Run(Seconds(1)); clock.Step(Seconds(0.5)); }
        Assert.True(Clock.IsWorking);
    }

    [Fact]
    public async Task A_demo_s_fast_clock_is_no_step()
    {
        var wall = new FakeTimeProvider(OpenStudio.Start.ToDateTimeOffset());
        var fast = new ScaledClock(wall, 600, OpenStudio.Start.ToDateTimeOffset());
        fast.Begin();
        var watch = new ClockWatch(studio.Store, health, fast, LoopPace.ForSpeed(600));
        for (var i = 0; i < 20; i++) { await Tick(watch); wall.Advance(TimeSpan.FromSeconds(0.1 + i % 5 * 2)); }
        Assert.True(Clock.IsWorking);
        Assert.Equal(OpenStudio.Start + Seconds(600 * (0.1 * 20 + 2 * 40)), Instant.FromDateTimeOffset(fast.GetUtcNow()));
    }

    [Fact]
    public async Task A_clock_behind_what_is_stored_says_so_until_it_has_caught_up_also_after_everything_was_moved()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, OpenStudio.Start));
        studio.Now += Hours(3);
        await studio.Move();
        Assert.Equal(0, studio.Scalar("SELECT count(*) FROM arrival"));
        var clock = new SteppingClock(OpenStudio.Start - Hours(2));
        var watch = new ClockWatch(studio.Store, health, clock, LoopPace.ForSpeed(1));
        await Tick(watch);
        Assert.False(Clock.IsWorking);
        Assert.Contains("set the clock", Clock.Detail, StringComparison.Ordinal);
        clock.Run(Hours(2));
        await Tick(watch);
        Assert.True(Clock.IsWorking);
    }

    /// <summary>A wall clock that can be set, beside a monotonic one that cannot.</summary>
    sealed class SteppingClock(Instant start) : TimeProvider
    {
        Instant utc = start;
        Duration run;

        public void Run(Duration span) => (utc, run) = (utc + span, run + span);
        public void Step(Duration by) => utc += by;
        public override DateTimeOffset GetUtcNow() => utc.ToDateTimeOffset();
        public override long GetTimestamp() => run.BclCompatibleTicks;
        public override long TimestampFrequency => TimeSpan.TicksPerSecond;
    }
}
