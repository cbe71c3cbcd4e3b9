using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Logbook;

/// <summary>What an appliance is meant to be doing: by hand, by the clock, and after a correction or a restart.</summary>
public sealed class ModeTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    ModeInForce Furnace => studio.The<ModeBook>().Of("furnace-1");

    [Fact]
    public async Task A_mode_logged_is_in_force_and_survives_a_restart()
    {
        Assert.Equal((Mode.Holding, "configuration"), (Furnace.Mode, Furnace.Who));
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"working","who":"Mo"}""");
        Assert.Equal(new ModeInForce(Mode.Working, studio.Now, "Mo"), Furnace);
        await studio.Restart();
        Assert.Equal(new ModeInForce(Mode.Working, studio.Now, "Mo"), Furnace);
    }

    [Fact]
    public async Task A_mode_logged_for_the_past_does_not_take_over()
    {
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"working"}""");
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"off","time":"2026-03-02T06:00:00Z"}""");
        Assert.Equal(Mode.Working, Furnace.Mode);
    }

    [Fact]
    public async Task Of_two_modes_at_the_same_moment_the_last_logged_holds_after_a_restart_too()
    {
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"working","time":"2026-03-02T08:00:00Z"}""");
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"charging","time":"2026-03-02T08:00:00Z"}""");
        Assert.Equal(Mode.Charging, Furnace.Mode);
        await studio.Restart();
        Assert.Equal(Mode.Charging, Furnace.Mode);
    }

    [Fact]
    public async Task A_corrected_mode_counts_at_once_and_after_a_restart()
    {
        await studio.Send("furnace-1/log", """{"entry":"mode","id":"m1","mode":"working","time":"2026-03-02T07:00:00Z"}""");
        await studio.Send("furnace-1/log", """{"entry":"mode","id":"m2","mode":"off","time":"2026-03-02T07:30:00Z"}""");
        await studio.Send("furnace-1/log", """{"entry":"correction","of":"m2","mode":"charging"}""");
        Assert.Equal((Mode.Charging, Instant.FromUtc(2026, 3, 2, 7, 30)), (Furnace.Mode, Furnace.Since));
        await studio.Restart();
        Assert.Equal(Mode.Charging, Furnace.Mode);
        await studio.Send("furnace-1/log", """{"entry":"correction","of":"m2"}""");
        Assert.Equal((Mode.Working, Instant.FromUtc(2026, 3, 2, 7, 0)), (Furnace.Mode, Furnace.Since));
        await studio.Restart();
        Assert.Equal(Mode.Working, Furnace.Mode);
        await studio.Send("furnace-1/log", """{"entry":"correction","of":"m1"}""");
        Assert.Equal((Mode.Holding, "configuration"), (Furnace.Mode, Furnace.Who));
    }

    static StudioConfiguration ByTheClock(params (string Days, string At, string Mode)[] lines) =>
        SomeStudio.With("furnace-1", a => a with { Timetable = [.. lines.Select(l => new TimetableEntry { Days = l.Days, At = l.At, Mode = l.Mode })] });

    [Fact]
    public async Task The_timetable_changes_modes_once_at_the_studio_s_time()
    {
        await studio.Restart(ByTheClock(("mon-fri", "09:30", "working"), ("mon-fri", "18:00", "holding")));
        // 08:00 UTC is 09:00 in Berlin: the last change was on Friday at 18:00.
        await studio.Tick();
        Assert.Equal((Mode.Holding, "timetable"), (Furnace.Mode, Furnace.Who));
        studio.Now += Minutes(29);
        await studio.Tick();
        Assert.Equal(Mode.Holding, Furnace.Mode);
        studio.Now += Minutes(2);
        await studio.Tick();
        await studio.Tick();
        await studio.Restart();
        await studio.Tick();
        Assert.Equal((Mode.Working, Instant.FromUtc(2026, 3, 2, 8, 30)), (Furnace.Mode, Furnace.Since));
        Assert.Equal(2, studio.Scalar("SELECT count(*) FROM log_entry"));
    }

    [Fact]
    public async Task Changes_missed_in_a_downtime_are_made_up_for_even_after_days()
    {
        await studio.Restart(ByTheClock(("tue", "08:00", "working"), ("tue", "17:00", "off")));
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"holding","who":"Mo"}""");
        await studio.Tick();
        studio.Now = Instant.FromUtc(2026, 3, 6, 12, 0);
        await studio.Restart();
        await studio.Tick();
        Assert.Equal((Mode.Off, Instant.FromUtc(2026, 3, 3, 16, 0)), (Furnace.Mode, Furnace.Since));
        Assert.Equal(["holding", "working", "off"], studio.Logbook.InForce("furnace-1", OpenStudio.Start, studio.Now).Where(e => e.Entry == "mode").Select(e => e.Fields["mode"]!.GetValue<string>()));
    }

    [Fact]
    public async Task A_tap_after_the_timetable_holds_through_a_restart()
    {
        await studio.Restart(ByTheClock(("daily", "08:30", "working")));
        await studio.Tick();
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"off","who":"Mo"}""");
        studio.Now += Hours(3);
        await studio.Restart();
        await studio.Tick();
        Assert.Equal((Mode.Off, "Mo"), (Furnace.Mode, Furnace.Who));
    }

    static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    static IReadOnlyList<(Instant At, Mode Mode)> Due(LocalDate day, params (string At, string Mode)[] lines) =>
        new Timetable([.. lines.Select(l => new TimetableEntry { At = l.At, Mode = l.Mode })], Berlin)
            .Due(day.AtStartOfDayInZone(Berlin).ToInstant() - Seconds(1), day.PlusDays(1).AtStartOfDayInZone(Berlin).ToInstant() - Seconds(1));

    [Fact]
    public void Practice_11_a_time_that_the_clock_skips_in_spring_comes_right_after_the_skip() =>
        Assert.Equal([(Instant.FromUtc(2026, 3, 29, 1, 0), Mode.Off), (Instant.FromUtc(2026, 3, 29, 1, 10), Mode.Working)], Due(new(2026, 3, 29), ("02:15", "off"), ("03:10", "working")));

    [Fact]
    public void Practice_11_a_time_that_the_clock_shows_twice_in_autumn_comes_once_the_first_time() =>
        Assert.Equal([(Instant.FromUtc(2026, 10, 25, 0, 30), Mode.Off)], Due(new(2026, 10, 25), ("02:30", "off")));

    [Fact]
    public async Task Practice_12_a_clock_set_back_an_hour_logs_no_change_twice()
    {
        var timetable = new Timetable([new() { At = "09:30", Mode = "working" }], Berlin);
        var at = Instant.FromUtc(2026, 3, 2, 8, 30);
        Assert.Single(timetable.Due(at - Hours(1), at));
        Assert.Empty(timetable.Due(at, at - Hours(1)));
        await studio.Restart(ByTheClock(("daily", "09:30", "working")));
        studio.Now = at;
        await studio.Tick();
        await studio.Restart();
        await studio.Tick();
        Assert.Equal(1, studio.Scalar("SELECT count(*) FROM log_entry WHERE at = " + HotShop.Monitor.Store.Columns.ToMicroseconds(at)));
    }
}
