using System.Collections.Concurrent;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>The newest value of a channel, in its quantity's canonical unit.</summary>
public sealed record LatestReading(Instant At, Instant ArrivedAt, double Value, string Unit, ReadingMarks Marks);

/// <summary>Quality of a channel's newest value, as the pages and interfaces name it.</summary>
public enum Quality { Good, Stale, Implausible, Late, Missing }

/// <summary>Newest value per channel; filled from the store at start, then by each commit.</summary>
public sealed class LatestReadings
{
    readonly ConcurrentDictionary<string, LatestReading> latest = new();

    public LatestReadings(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        // SQLite takes the other columns of a bare max() from the row that holds it.
        command.CommandText = """
            SELECT s.channel, s.unit, r.at, r.arrived, r.value, r.marks FROM series s JOIN (
                SELECT series, max(at) AS at, at AS arrived, value, marks FROM reading GROUP BY series
                UNION ALL SELECT series, max(at) AS at, arrived, value, marks FROM arrival GROUP BY series) r ON r.series = s.id
            """;
        using var rows = command.ExecuteReader();
        while (rows.Read())
            Adopt(rows.GetString(0), new LatestReading(rows.GetInstant(2), rows.GetInstant(3), rows.GetDouble(4), rows.GetString(1), (ReadingMarks)rows.GetInt32(5)));
    }

    public LatestReading? Of(ChannelPlan channel) =>
        latest.TryGetValue(channel.Id, out var reading) && reading.Unit == channel.Quantity.CanonicalUnit() ? reading : null;

    /// <summary>Newer than three intervals is good; an old value is stale, however it looked.</summary>
    public Quality QualityOf(ChannelPlan channel, Instant now) => Of(channel) switch
    {
        null => Quality.Missing,
        { } reading when (reading.Marks & (ReadingMarks.Implausible | ReadingMarks.OpenCircuit)) != 0 => Quality.Implausible,
        { } reading when now - reading.At > channel.LongestGap => Quality.Stale,
        { } reading when (reading.Marks & ReadingMarks.Late) != 0 => Quality.Late,
        _ => Quality.Good,
    };

    internal void Adopt(IEnumerable<StoredReading> readings)
    {
        foreach (var reading in readings)
            if (reading.IsCanonical) Adopt(reading.Channel.Id, new LatestReading(reading.At, reading.ArrivedAt, reading.Value, reading.Unit, reading.Marks));
    }

    /// <summary>A raw voltage never hides the temperature made from it: only a channel's canonical unit is kept when both are there.</summary>
    void Adopt(string channel, LatestReading reading)
    {
        if (reading.Unit == Quantities.Millivolt) return;
        latest.AddOrUpdate(channel, reading, (_, before) => reading.At >= before.At || reading.Unit != before.Unit ? reading : before);
    }
}
