using System.Collections.Immutable;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Puts the memory together again after a start: occurrences and pending conditions from their rows, the last live values from the readings.</summary>
sealed class AlarmMemoryLoad(AlarmEngine engine, IStoreReader store, LatestReadings latest)
{
    const ReadingMarks NotLive = ReadingMarks.Late | ReadingMarks.Retained | ReadingMarks.Implausible | ReadingMarks.OpenCircuit;

    /// <returns>The memory, and occurrences of alarms that the configuration no longer has.</returns>
    public (StudioMemory Memory, IReadOnlyList<AlarmOccurrence> Orphans) Load(Instant now)
    {
        using var connection = store.Open();
        var pending = PendingRows.Read(connection);
        var occurrences = OccurrenceRows.Last(connection);
        var last = occurrences.GroupBy(o => o.AlarmId).ToDictionary(g => g.Key, g => g.Last());
        var alarms = engine.Definitions.Select(d =>
        {
            var memory = pending.TryGetValue(d.Id, out var row) ? AlarmMemory.Quiet with { Timing = row.Timing, Rule = row.Rule, NotBefore = row.NotBefore } : AlarmMemory.Quiet;
            return last.TryGetValue(d.Id, out var occurrence) ? memory with { Occurrence = occurrence, State = occurrence.State } : memory;
        });
        var known = engine.Definitions.Select(d => d.Id).ToHashSet(StringComparer.Ordinal);
        return (engine.Begin(now) with { Alarms = [.. alarms], Channels = Channels() },
            [.. occurrences.Where(o => o.ClearedAt is null && !known.Contains(o.AlarmId))]);
    }

    ImmutableArray<ChannelMemory> Channels() =>
    [
        .. engine.Channels.Select(c => latest.Of(c) is { } reading && (reading.Marks & NotLive) == 0
            ? new ChannelMemory(reading.At, reading.Value, reading.ArrivedAt, reading.ArrivedAt)
            : ChannelMemory.Nothing),
    ];
}
