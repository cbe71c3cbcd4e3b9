using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Writes minute rows once, a little after the minute has ended. What comes later still is put right by the hourly move.</summary>
sealed class MinuteClose(RecentSamples recent, SeriesBook series, ChannelDirectory channels) : ITickStage
{
    static readonly Duration Grace = Duration.FromSeconds(10);
    Instant? closedTo;

    public void Tick(WriteScope scope)
    {
        var end = FloorToMinute(scope.Now - Grace);
        var before = closedTo;
        if (before is { } closed && end <= closed) return;
        // The first tick closes the minute before it; older ones belong to the hourly move.
        var first = before ?? end - Duration.FromMinutes(1);
        // After a long sleep of the process only the last minutes are still in memory.
        first = Instant.Max(first, end - Duration.FromMinutes(3));
        foreach (var one in series.All)
        {
            if (channels.Find(one.Channel) is not { } channel || one.Unit != channel.Quantity.CanonicalUnit()) continue;
            var samples = recent.Of(one.Id);
            if (samples.Count == 0) continue;
            for (var minute = first; minute < end; minute += Duration.FromMinutes(1))
                MinuteRow.Of(minute, samples, channel)?.Write(one.Id, scope);
        }
        recent.Trim(end);
        closedTo = end;
        scope.OnRollback(() => closedTo = before);
    }

    static Instant FloorToMinute(Instant at) => Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds() / 60 * 60);
}
