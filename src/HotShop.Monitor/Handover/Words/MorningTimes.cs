using System.Globalization;
using NodaTime;

namespace HotShop.Monitor.Handover.Words;

/// <summary>Times as one says them in the morning.</summary>
sealed class MorningTimes(DateTimeZone zone, LocalDate morning)
{
    /// <summary>"03:12" for the night and its morning, "Thu 14:00" within a week, "3 Mar 2026" beyond.</summary>
    public string At(Instant at)
    {
        var local = at.InZone(zone).LocalDateTime;
        var days = Period.Between(morning, local.Date, PeriodUnits.Days).Days;
        if (days == 0 || (days == -1 && local.Hour >= 12)) return local.ToString("HH:mm", CultureInfo.InvariantCulture);
        return Math.Abs(days) < 6 ? local.ToString("ddd HH:mm", CultureInfo.InvariantCulture) : Day(at);
    }

    public string Day(Instant at) => at.InZone(zone).Date.ToString("d MMM uuuu", CultureInfo.InvariantCulture);

    /// <summary>"Wednesday, 4 March".</summary>
    public string MorningDay => morning.ToString("dddd, d MMMM", CultureInfo.InvariantCulture);

    public static string Span(Duration span) => Notifications.MessageText.Span(span);

    public static string Count(int count, string one, string many) => count == 1 ? $"one {one}" : string.Create(CultureInfo.InvariantCulture, $"{count} {many}");
}
