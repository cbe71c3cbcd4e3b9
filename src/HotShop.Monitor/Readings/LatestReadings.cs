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
    // By channel and unit: a raw voltage never hides the temperature made from it, nor a value from before its channel measured something else.
    readonly ConcurrentDictionary<(string Channel, string Unit), LatestReading> latest = new();

    public LatestReadings(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        // The end of each series' key, not a grouping: that would read every reading ever kept. SQLite takes the other columns of a bare max() from the row that holds it.
        command.CommandText = """
            SELECT s.channel, s.unit, r.at, r.at, r.value, r.marks FROM series s JOIN reading r ON r.series = s.id AND r.at = (SELECT max(at) FROM reading WHERE series = s.id)
            UNION ALL
            SELECT s.channel, s.unit, a.at, a.arrived, a.value, a.marks FROM series s JOIN (SELECT series, max(at) AS at, arrived, value, marks FROM arrival GROUP BY series) a ON a.series = s.id
            """;
        using var rows = command.ExecuteReader();
        while (rows.Read())
            Adopt(rows.GetString(0), new LatestReading(rows.GetInstant(2), rows.GetInstant(3), rows.GetDouble(4), rows.GetString(1), (ReadingMarks)rows.GetInt32(5)));
    }

    public LatestReading? Of(ChannelPlan channel) =>
        latest.GetValueOrDefault((channel.Id, channel.Quantity.CanonicalUnit()));

    /// <summary>The newest temperature as it was read, where a calibration corrected it.</summary>
    public double? AsReadOf(ChannelPlan channel) =>
        latest.TryGetValue((channel.Id, Quantities.AsRead), out var read) && Of(channel)?.At == read.At ? read.Value : null;

    /// <summary>Newer than three intervals is good; an old value is stale, however it looked. So is one that a broker kept: it is never fresh.</summary>
    public Quality QualityOf(ChannelPlan channel, Instant now) => Of(channel) switch
    {
        var reading when channel.Thermocouple is not null && VoltageTrouble(channel, reading, now) is { } trouble => trouble,
        null => Quality.Missing,
        { } reading when now - reading.At > channel.LongestGap || (reading.Marks & ReadingMarks.Retained) != 0 => Quality.Stale,
        { } reading when (reading.Marks & (ReadingMarks.Implausible | ReadingMarks.OpenCircuit)) != 0 => Quality.Implausible,
        { } reading when (reading.Marks & ReadingMarks.Late) != 0 => Quality.Late,
        _ => Quality.Good,
    };

    /// <summary>Whether a reading is its channel's newest: one of a backlog is not, and must not pass for the present.</summary>
    internal bool IsNewest(StoredReading reading) => latest.TryGetValue((reading.Channel.Id, reading.Unit), out var newest) && newest.At == reading.At;

    internal void Adopt(IEnumerable<StoredReading> readings)
    {
        foreach (var reading in readings)
            Adopt(reading.Channel.Id, new LatestReading(reading.At, reading.ArrivedAt, reading.Value, reading.Unit, reading.Marks));
    }

    /// <summary>A voltage newer than the last temperature, and why it gave none. An old one tells nothing about the wire now.</summary>
    Quality? VoltageTrouble(ChannelPlan channel, LatestReading? temperature, Instant now) =>
        latest.TryGetValue((channel.Id, Quantities.Millivolt), out var voltage) && (temperature is null || voltage.At > temperature.At) && now - voltage.At <= channel.LongestGap
            ? (voltage.Marks & ReadingMarks.OpenCircuit) != 0 ? Quality.OpenCircuit
                : (voltage.Marks & ReadingMarks.NoTerminals) != 0 ? Quality.NoTerminals : null
            : null;

    void Adopt(string channel, LatestReading reading) =>
        latest.AddOrUpdate((channel, reading.Unit), reading, (_, before) => reading.At >= before.At ? reading : before);
}
