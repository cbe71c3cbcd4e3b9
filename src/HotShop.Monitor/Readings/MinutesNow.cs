using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Minutes as they are true now: what came late is not in its minute's row before the hour is moved, and would look like a gap until then.</summary>
static class MinutesNow
{
    /// <summary>Minutes of hours further back have been repaired by the hourly move.</summary>
    static readonly Duration notMovedYet = Duration.FromMinutes(125);

    static readonly Duration minute = Duration.FromMinutes(1);

    /// <summary>Minute rows in [from, to); of the last two hours those that are missing are made from the readings themselves. The running minute is left out.</summary>
    public static IReadOnlyList<MinuteRow> MinutesAsOf(this IReadingHistory history, ChannelPlan channel, Instant from, Instant to)
    {
        var rows = history.Minutes(channel, from, to);
        var start = Instant.FromUnixTimeSeconds(Instant.Max(from, to - notMovedYet).ToUnixTimeSeconds() / 60 * 60);
        var samples = history.WithNeighbours(channel, start, to);
        if (samples.Count == 0) return rows;
        var have = rows.Where(r => r.Minute >= start).Select(r => r.Minute).ToHashSet();
        var made = new List<MinuteRow>(rows);
        for (var at = start; at + minute <= to; at += minute)
            if (at >= from && !have.Contains(at) && MinuteRow.Of(at, samples, channel) is { } row) made.Add(row);
        return made.Count == rows.Count ? rows : [.. made.OrderBy(r => r.Minute)];
    }
}
