using NodaTime;

namespace HotShop.Monitor.Reports.Mail;

/// <summary>When a month's report is due. Pure.</summary>
static class ReportCalendar
{
    /// <summary>After so many months of silence older reports are no longer caught up: they can be had from the page.</summary>
    const int MostCaughtUp = 12;

    /// <summary>
    /// The first of the next month at an hour of the studio's clock. Where that hour is skipped by a clock change it is due right after it, where it comes twice, at its first coming.
    /// </summary>
    public static Instant DueAt(YearMonth month, int hour, DateTimeZone zone) =>
        month.PlusMonths(1).OnDayOfMonth(1).At(new LocalTime(hour, 0)).InZoneLeniently(zone).ToInstant();

    /// <summary>The newest month whose report is due.</summary>
    public static YearMonth Newest(Instant now, int hour, DateTimeZone zone)
    {
        var today = now.InZone(zone).Date;
        var last = today.ToYearMonth().PlusMonths(-1);
        return DueAt(last, hour, zone) <= now ? last : last.PlusMonths(-1);
    }

    /// <summary>Months that somebody still has to get, oldest first: those after the last one settled for this person, or the newest alone where none was.</summary>
    public static IEnumerable<YearMonth> Due(YearMonth? lastSettled, Instant now, int hour, DateTimeZone zone)
    {
        var newest = Newest(now, hour, zone);
        var first = lastSettled?.PlusMonths(1) ?? newest;
        if (first < newest.PlusMonths(1 - MostCaughtUp)) first = newest.PlusMonths(1 - MostCaughtUp);
        for (var month = first; month <= newest; month = month.PlusMonths(1)) yield return month;
    }
}
