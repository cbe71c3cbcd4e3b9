using NodaTime;

namespace HotShop.Monitor.Tests.Support;

/// <summary>Spans as tests write them.</summary>
static class Times
{
    public static Duration Seconds(double seconds) => Duration.FromSeconds(seconds);
    public static Duration Minutes(double minutes) => Duration.FromMinutes(minutes);
    public static Duration Hours(double hours) => Duration.FromHours(hours);
    public static Duration Days(double days) => Duration.FromDays(days);

    /// <summary>Moments from a start to an end, both included, so far apart.</summary>
    public static IEnumerable<Instant> Every(Duration step, Instant from, Instant to)
    {
        for (var at = from; at <= to; at += step) yield return at;
    }

    /// <summary>Readings of one value.</summary>
    public static IEnumerable<(Instant At, double Value)> Steady(double value, Duration step, Instant from, Instant to) => Every(step, from, to).Select(at => (at, value));
}
