using HotShop.Monitor.Reports.Mail;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The first of the month by the studio's clock, clock changes included. Rules of the zones: IANA time zone database.</summary>
public class ReportCalendarTests
{
    static readonly DateTimeZone berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    static Instant Utc(int year, int month, int day, int hour, int minute = 0) => Instant.FromUtc(year, month, day, hour, minute);

    [Fact]
    public void Seven_in_the_morning_is_seven_by_the_wall_in_winter_and_in_summer()
    {
        Assert.Equal(Utc(2026, 3, 1, 6), ReportCalendar.DueAt(new(2026, 2), 7, berlin));
        Assert.Equal(Utc(2026, 4, 1, 5), ReportCalendar.DueAt(new(2026, 3), 7, berlin));
        Assert.Equal(Utc(2027, 1, 1, 6), ReportCalendar.DueAt(new(2026, 12), 7, berlin));
    }

    // Uruguay went to summer time on 1 October 2006 at 02:00 (UTC-3 to UTC-2), back at the end of March.
    [Fact]
    public void An_hour_that_the_clock_skips_on_the_first_is_due_right_after_the_skip() =>
        Assert.Equal(Utc(2006, 10, 1, 5), ReportCalendar.DueAt(new(2006, 9), 2, DateTimeZoneProviders.Tzdb["America/Montevideo"]));

    // New York went back from 02:00 to 01:00 on Sunday 1 November 2026 (UTC-4 to UTC-5).
    [Fact]
    public void An_hour_that_comes_twice_on_the_first_is_due_at_its_first_coming()
    {
        var zone = DateTimeZoneProviders.Tzdb["America/New_York"];
        Assert.Equal(Utc(2026, 11, 1, 5), ReportCalendar.DueAt(new(2026, 10), 1, zone));
        Assert.Equal(new YearMonth(2026, 10), ReportCalendar.Newest(Utc(2026, 11, 1, 6), 1, zone));   // its second coming: still the same month, once
    }

    [Fact]
    public void A_minute_before_the_hour_the_report_is_not_due_yet()
    {
        Assert.Equal(new YearMonth(2026, 9), ReportCalendar.Newest(Utc(2026, 11, 1, 5, 59), 7, berlin));
        Assert.Equal(new YearMonth(2026, 10), ReportCalendar.Newest(Utc(2026, 11, 1, 6), 7, berlin));
        Assert.Equal(new YearMonth(2026, 10), ReportCalendar.Newest(Utc(2026, 11, 30, 22), 7, berlin));
    }

    [Fact]
    public void After_downtime_over_two_firsts_both_months_are_due_in_order() =>
        Assert.Equal([new(2026, 9), new(2026, 10)], ReportCalendar.Due(new(2026, 8), Utc(2026, 11, 3, 12), 7, berlin));

    [Fact]
    public void Somebody_new_gets_the_newest_month_and_not_the_whole_past() =>
        Assert.Equal([new(2026, 10)], ReportCalendar.Due(null, Utc(2026, 11, 25, 12), 7, berlin));

    [Fact]
    public void Nothing_is_due_for_whoever_has_the_newest() =>
        Assert.Empty(ReportCalendar.Due(new(2026, 10), Utc(2026, 11, 30, 23, 59), 7, berlin));

    [Fact]
    public void After_years_of_silence_the_last_twelve_months_are_caught_up() =>
        Assert.Equal(12, ReportCalendar.Due(new(2020, 1), Utc(2026, 11, 3, 12), 7, berlin).Count());
}
