using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Readings;

/// <summary>A channel in one unit: what rows are kept under.</summary>
public sealed record Series(int Id, string Channel, string Unit);

/// <summary>Numbers of the series, kept in memory; new ones are made in the transaction that needs them.</summary>
public sealed class SeriesBook
{
    readonly Dictionary<(string Channel, string Unit), Series> known = [];
    readonly Lock gate = new();

    public SeriesBook(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT id, channel, unit FROM series";
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            var series = new Series(rows.GetInt32(0), rows.GetString(1), rows.GetString(2));
            known[(series.Channel, series.Unit)] = series;
        }
    }

    public IReadOnlyList<Series> All
    {
        get { lock (gate) return [.. known.Values]; }
    }

    /// <returns>Null where the channel never had a reading in this unit.</returns>
    public Series? Find(string channel, string unit)
    {
        lock (gate) return known.GetValueOrDefault((channel, unit));
    }

    /// <summary>The series a channel's values are reported from: the one in its quantity's canonical unit.</summary>
    public Series? Of(ChannelPlan channel) => Find(channel.Id, channel.Quantity.CanonicalUnit());

    internal Series FindOrMake(string channel, string unit, WriteScope scope)
    {
        if (Find(channel, unit) is { } series) return series;
        using var command = scope.Command("INSERT INTO series (channel, unit) VALUES ($channel, $unit) RETURNING id", ("$channel", channel), ("$unit", unit));
        series = new Series((int)(long)command.ExecuteScalar()!, channel, unit);
        // What is kept beside what was made of it is no change; anything else is, and must be seen: figures before and after do not compare.
        if (!Quantities.IsRaw(unit) && All.Any(s => s.Channel == channel && !Quantities.IsRaw(s.Unit))) scope.Count(Counters.UnitChanged);
        lock (gate) known[(channel, unit)] = series;
        scope.OnRollback(() => { lock (gate) known.Remove((channel, unit)); });
        return series;
    }
}
