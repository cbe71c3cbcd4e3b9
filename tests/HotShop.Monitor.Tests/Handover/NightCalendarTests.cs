using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Handover.MorningStudio;

namespace HotShop.Monitor.Tests.Handover;

public sealed class NightCalendarTests : IAsyncDisposable
{
    OpenStudio studio = MorningStudio.Open(now: At(4, 7));

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    NightCalendar Calendar => studio.The<NightCalendar>();

    async Task With(HandoverOptions handover, Instant? now = null)
    {
        await studio.DisposeAsync();
        studio = MorningStudio.Open(SomeStudio.Configuration with { Handover = handover }, now ?? At(4, 7));
    }

    [Fact]
    public async Task The_night_begins_when_the_last_work_of_the_evening_ended()
    {
        await studio.Mode("glory-hole-1", "working", At(3, 10));
        await studio.Mode("glory-hole-1", "off", At(3, 19, 47));
        var night = Calendar.Of(At(4, 7));
        Assert.Equal((At(3, 19, 47), At(4, 7), true, new LocalDate(2026, 3, 4)), (night.From, night.To, night.IsEndOfWorkLogged, night.Morning));
    }

    [Fact]
    public void Where_nobody_logs_the_end_of_work_it_begins_at_the_configured_evening() =>
        Assert.Equal((At(3, 18), false), (Calendar.Of(At(4, 7)).From, Calendar.Of(At(4, 7)).IsEndOfWorkLogged));

    [Fact]
    public async Task Work_into_the_small_hours_is_the_end_of_its_own_night()
    {
        await studio.Mode("glory-hole-1", "working", At(3, 16));
        await studio.Mode("glory-hole-1", "off", At(4, 1, 20));
        Assert.Equal(At(4, 1, 20), Calendar.Of(At(4, 7)).From);
    }

    [Fact]
    public void In_the_afternoon_the_night_still_is_the_one_before_that_morning_and_ends_at_noon()
    {
        studio.Now = At(4, 16);
        Assert.Equal((At(3, 18), At(4, 12)), (Calendar.Of(At(4, 16)).From, Calendar.Of(At(4, 16)).To));
    }

    [Fact]
    public async Task Gas_is_compared_over_whole_hours_up_to_the_hour_of_the_handover()
    {
        await studio.Worked(3);   // until 18:30
        var night = Calendar.Of(At(4, 9, 25));
        Assert.Equal((At(3, 19), At(4, 7)), (night.GasFrom, night.GasTo));
        Assert.Equal((At(1, 19), At(2, 7)), Calendar.SameHours(night, new LocalDate(2026, 3, 2)));
    }

    // The clocks of Berlin go forward at 02:00 on 29 March 2026 and back at 03:00 on 25 October 2026 (IANA time zone database, Europe/Berlin).
    [Fact]
    public async Task The_same_hours_of_another_night_are_those_of_the_clock_on_the_wall_across_a_change()
    {
        await With(new(), At(29, 7));
        var night = Calendar.Of(At(29, 7));
        Assert.Equal(Duration.FromHours(12), night.GasTo - night.GasFrom);      // 18:00 to 07:00, an hour is missing
        var (from, to) = Calendar.SameHours(night, new LocalDate(2026, 3, 28));
        Assert.Equal((At(27, 18), At(28, 7)), (from, to));
    }

    [Fact]
    public async Task A_timetable_says_whether_the_next_day_is_worked()
    {
        await studio.DisposeAsync();
        studio = MorningStudio.Open(SomeStudio.With("glory-hole-1", g => g with { Timetable = [new() { Days = "tue-sat", At = "10:00", Mode = "working" }, new() { Days = "tue-sat", At = "18:30", Mode = "off" }] }), At(4, 7));
        Assert.Equal(NightKind.BeforeWork, Calendar.KindBefore(new LocalDate(2026, 3, 4), At(4, 7)));   // a Wednesday
        Assert.Equal(NightKind.BeforeRest, Calendar.KindBefore(new LocalDate(2026, 3, 8), At(8, 7)));   // a Sunday
    }

    [Fact]
    public async Task Without_a_timetable_the_weekdays_of_the_last_weeks_say_it_and_a_day_that_is_over_says_it_itself()
    {
        foreach (var day in new[] { 3, 4, 5, 10, 11, 12 }) await studio.Worked(day);
        var seven = At(17, 7);   // a Tuesday
        Assert.Equal(NightKind.BeforeWork, Calendar.KindBefore(new LocalDate(2026, 3, 17), seven));
        Assert.Equal(NightKind.BeforeRest, Calendar.KindBefore(new LocalDate(2026, 3, 16), At(16, 7)));
        Assert.Equal(NightKind.BeforeRest, Calendar.KindBefore(new LocalDate(2026, 3, 6), seven));
        Assert.Equal(NightKind.BeforeWork, Calendar.KindBefore(new LocalDate(2026, 3, 12), seven));
    }

    [Fact]
    public async Task What_nobody_can_know_yet_is_not_guessed()
    {
        Assert.Equal(NightKind.NotKnown, Calendar.KindBefore(new LocalDate(2026, 3, 4), At(4, 7)));
        await studio.Worked(3);
        Assert.Equal(NightKind.NotKnown, Calendar.KindBefore(new LocalDate(2026, 3, 5), At(5, 7)));
    }

    [Fact]
    public async Task A_handover_is_due_at_its_hour_on_its_days()
    {
        await With(new() { Hour = "06:45", Days = "tue-sat" });
        Assert.Equal((new LocalDate(2026, 3, 3), At(3, 6, 45)), Calendar.LastDue(At(4, 6, 44)));
        Assert.Equal((new LocalDate(2026, 3, 4), At(4, 6, 45)), Calendar.LastDue(At(4, 6, 45)));
        Assert.Equal(new LocalDate(2026, 2, 28), Calendar.LastDue(At(2, 9))!.Value.Day);   // a Monday looks back to Saturday
    }

    [Fact]
    public async Task An_hour_that_spring_skips_comes_after_the_skip_and_one_that_autumn_shows_twice_comes_once()
    {
        await With(new() { Hour = "02:30" });
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 30), Calendar.LastDue(At(29, 7))!.Value.At);        // 03:30 summer time
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), Calendar.LastDue(At(25, 7, 0, 10))!.Value.At);  // 02:30 summer time, the first of two
    }
}
