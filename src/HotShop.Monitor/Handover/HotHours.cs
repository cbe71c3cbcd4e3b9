using HotShop.Monitor.Readings;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>How long a channel was above a temperature, from hour rows, and from minutes where an hour crosses it. Pure.</summary>
static class HotHours
{
    /// <param name="hours">Hour rows, in order.</param>
    /// <param name="minutesOf">Minutes of an hour that was partly above; empty where they are no longer kept.</param>
    /// <param name="celsius">°C.</param>
    /// <returns>Hours above, only of the time that was measured.</returns>
    public static double Above(IEnumerable<HourRow> hours, Func<Instant, IReadOnlyList<MinuteRow>> minutesOf, double celsius)
    {
        var seconds = 0.0;
        foreach (var hour in hours)
        {
            if (hour.Min is not { } min || hour.Max is not { } max || max < celsius) continue;
            seconds += min >= celsius ? hour.CoveredSeconds : Partly(hour, min, max, minutesOf(hour.Hour), celsius);
        }
        return seconds / 3600;
    }

    static double Partly(HourRow hour, double min, double max, IReadOnlyList<MinuteRow> minutes, double celsius)
    {
        if (minutes.Count > 0) return Math.Min(hour.CoveredSeconds, 60.0 * minutes.Count(m => m.Mean >= celsius));
        // Without minutes: as if it had gone evenly from its lowest to its highest.
        return hour.CoveredSeconds * (max - celsius) / (max - min);
    }
}
