using System.Collections.Concurrent;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>The newest value of a channel, in its quantity's canonical unit.</summary>
public sealed record LatestReading(Instant At, Instant ArrivedAt, double Value, string Unit, ReadingMarks Marks);

/// <summary>Quality of a channel's newest value, as the pages and interfaces name it.</summary>
public enum Quality { Good, Stale, Implausible, OpenCircuit, NoTerminals, Late, Missing }

/// <summary>Newest value per channel; filled from the store at start, then by each commit.</summary>
public sealed class LatestReadings
{
    readonly ConcurrentDictionary<string, LatestReading> latest = new();
    readonly ConcurrentDictionary<string, LatestReading> voltages = new();

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
        var reading when channel.Thermocouple is not null && VoltageTrouble(channel, reading) is { } trouble => trouble,
        null => Quality.Missing,
        { } reading when (reading.Marks & (ReadingMarks.Implausible | ReadingMarks.OpenCircuit)) != 0 => Quality.Implausible,
        { } reading when now - reading.At > channel.LongestGap => Quality.Stale,
        { } reading when (reading.Marks & ReadingMarks.Late) != 0 => Quality.Late,
        _ => Quality.Good,
    };

    internal void Adopt(IEnumerable<StoredReading> readings)
    {
        foreach (var reading in readings)
            Adopt(reading.Channel.Id, new LatestReading(reading.At, reading.ArrivedAt, reading.Value, reading.Unit, reading.Marks));
    }

    /// <summary>A voltage newer than the last temperature, and why it gave none.</summary>
    Quality? VoltageTrouble(ChannelPlan channel, LatestReading? temperature) =>
        voltages.TryGetValue(channel.Id, out var voltage) && (temperature is null || voltage.At > temperature.At)
            ? (voltage.Marks & ReadingMarks.OpenCircuit) != 0 ? Quality.OpenCircuit
                : (voltage.Marks & ReadingMarks.NoTerminals) != 0 ? Quality.NoTerminals : null
            : null;

    /// <summary>A raw voltage never hides the temperature made from it: it is kept apart, for what it says of the wire.</summary>
    void Adopt(string channel, LatestReading reading) =>
        (reading.Unit == Quantities.Millivolt ? voltages : latest).AddOrUpdate(channel, reading,
            (_, before) => reading.At >= before.At || reading.Unit != before.Unit ? reading : before);
}
