using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Readings;

/// <summary>Reads what was measured. Hours that are not closed, or that late readings have changed, are computed on the spot, up to now.</summary>
public interface IReadingHistory
{
    /// <summary>Samples in [from, to), at most so many (the newest); implausible ones are left out.</summary>
    IReadOnlyList<Sample> Raw(ChannelPlan channel, Instant from, Instant to, int most);

    /// <summary>Minute rows in [from, to). The running minute is not there yet.</summary>
    IReadOnlyList<MinuteRow> Minutes(ChannelPlan channel, Instant from, Instant to);

    /// <summary>Hour rows (UTC hours) that begin in [from, to), each true at this moment; hours without anything are left out.</summary>
    IReadOnlyList<HourRow> Hours(ChannelPlan channel, Instant from, Instant to);

    /// <summary>Plausible samples with up to three neighbours on each side of [from, to), for an integral over a part of an hour.</summary>
    IReadOnlyList<Sample> WithNeighbours(ChannelPlan channel, Instant from, Instant to);

    /// <summary>What a part of an hour adds up to; nothing where its raw readings are no longer kept.</summary>
    HourRow Part(ChannelPlan channel, Instant from, Instant to);
}

sealed class ReadingHistory(IStoreReader store, SeriesBook series, TimeProvider clock) : IReadingHistory
{
    public IReadOnlyList<Sample> Raw(ChannelPlan channel, Instant from, Instant to, int most)
    {
        if (series.Of(channel) is not { } one) return [];
        using var connection = store.Open();
        return SampleRows.Newest(connection, one.Id, from, to, most);
    }

    public IReadOnlyList<Sample> WithNeighbours(ChannelPlan channel, Instant from, Instant to)
    {
        if (series.Of(channel) is not { } one) return [];
        using var connection = store.Open();
        return SampleRows.WithNeighbours(connection, one.Id, from, to);
    }

    public HourRow Part(ChannelPlan channel, Instant from, Instant to) => HourRow.Between(from, to, WithNeighbours(channel, from, to), channel);

    public IReadOnlyList<MinuteRow> Minutes(ChannelPlan channel, Instant from, Instant to)
    {
        if (series.Of(channel) is not { } one) return [];
        using var connection = store.Open();
        return MinuteRow.Read(connection, one.Id, from, to);
    }

    public IReadOnlyList<HourRow> Hours(ChannelPlan channel, Instant from, Instant to)
    {
        if (series.Of(channel) is not { } one) return [];
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT hour, amount, covered_seconds, gap_seconds, mean, min, max, count, resets, 0 FROM hour h
            WHERE series = $series AND hour >= $from AND hour < $to AND NOT EXISTS (SELECT 1 FROM dirty d WHERE d.series = h.series AND d.hour = h.hour)
            UNION ALL
            SELECT hour, 0, 0, 0, NULL, NULL, NULL, 0, 0, 1 FROM dirty WHERE series = $series AND hour >= $from AND hour < $to
            ORDER BY 1
            """;
        command.Parameters.AddWithValue("$series", one.Id);
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        var list = new List<HourRow>();
        var open = new List<int>();
        using (var rows = command.ExecuteReader())
        {
            while (rows.Read())
            {
                if (rows.GetInt32(9) == 1) open.Add(list.Count);
                list.Add(HourRow.Read(rows, 0));
            }
        }
        // A held value is told up to now, not beyond: nobody knows how long it will hold.
        var now = clock.GetUtcNow().ToInstant();
        foreach (var index in open)
        {
            var hour = list[index].Hour;
            var end = Instant.Min(hour + Duration.FromHours(1), now);
            if (end > hour) list[index] = HourRow.Between(hour, end, SampleRows.WithNeighbours(connection, one.Id, hour, end), channel);
        }
        list.RemoveAll(row => row.IsEmpty);
        return list;
    }
}
