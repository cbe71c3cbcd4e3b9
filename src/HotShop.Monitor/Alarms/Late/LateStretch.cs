using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Alarms.Late;

/// <summary>Readings of one channel that came too late to ring and lie together in time.</summary>
/// <param name="Channel">Channel id, e.g. <c>furnace-1/crown</c>.</param>
/// <param name="Alarm">Id of the alarm whose limit all of them broke; empty for the stretch as a whole.</param>
/// <param name="From">Time of the first, by the device.</param>
/// <param name="Lowest">In the channel's canonical unit.</param>
/// <param name="ArrivedAt">When the last of them came.</param>
sealed record LateStretch(string Channel, string Alarm, Instant From, Instant Until, double Lowest, double Highest, int Count, Instant ArrivedAt)
{
    public LateStretch With(LateStretch other) => this with
    {
        From = Instant.Min(From, other.From), Until = Instant.Max(Until, other.Until), Lowest = Math.Min(Lowest, other.Lowest), Highest = Math.Max(Highest, other.Highest),
        Count = Count + other.Count, ArrivedAt = Instant.Max(ArrivedAt, other.ArrivedAt),
    };
}

/// <summary>Late stretches as rows. A stretch that touches one that is there is joined to it.</summary>
static class LateRows
{
    const string Fields = "channel, alarm, from_at, until_at, lowest, highest, count, arrived_at";

    /// <param name="joinWithin">Stretches no further apart than this are one.</param>
    public static void Add(WriteScope scope, LateStretch stretch, Duration joinWithin)
    {
        var touched = new List<long>();
        using (var command = scope.Command(
            $"SELECT {Fields}, id FROM found_later WHERE channel = $channel AND alarm = $alarm AND until_at >= $from AND from_at <= $until",
            ("$channel", stretch.Channel), ("$alarm", stretch.Alarm), ("$from", (stretch.From - joinWithin).ToMicroseconds()), ("$until", (stretch.Until + joinWithin).ToMicroseconds())))
        using (var row = command.ExecuteReader())
            while (row.Read())
            {
                stretch = stretch.With(Read(row));
                touched.Add(row.GetInt64(8));
            }
        foreach (var id in touched) scope.Execute("DELETE FROM found_later WHERE id = $id", ("$id", id));
        scope.Execute($"INSERT INTO found_later ({Fields}) VALUES ($channel, $alarm, $from, $until, $lowest, $highest, $count, $arrived)",
            ("$channel", stretch.Channel), ("$alarm", stretch.Alarm), ("$from", stretch.From.ToMicroseconds()), ("$until", stretch.Until.ToMicroseconds()),
            ("$lowest", stretch.Lowest), ("$highest", stretch.Highest), ("$count", stretch.Count), ("$arrived", stretch.ArrivedAt.ToMicroseconds()));
    }

    /// <summary>Stretches that share time with [from, to), in order of time.</summary>
    public static IReadOnlyList<LateStretch> Between(SqliteConnection connection, Instant from, Instant to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {Fields} FROM found_later WHERE until_at >= $from AND from_at < $to ORDER BY from_at, channel, alarm";
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        using var row = command.ExecuteReader();
        var stretches = new List<LateStretch>();
        while (row.Read()) stretches.Add(Read(row));
        return stretches;
    }

    static LateStretch Read(SqliteDataReader row) =>
        new(row.GetString(0), row.GetString(1), row.GetInstant(2), row.GetInstant(3), row.GetDouble(4), row.GetDouble(5), row.GetInt32(6), row.GetInstant(7));
}
