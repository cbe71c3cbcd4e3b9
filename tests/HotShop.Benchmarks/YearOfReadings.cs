using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>
/// Writes a year of thirty channels straight into the tables, hour by hour as the service does it, so that the pages are as full as the service leaves
/// them; raw rows for the last days only, and of those days hours and minutes as the service adds them up, so that a replay finds them the same.
/// </summary>
static class YearOfReadings
{
    public const int Days = 365;
    public static readonly Instant End = Instant.FromUtc(2026, 3, 3, 0, 0);
    public static readonly Instant Start = End - Duration.FromDays(Days);

    const int Neighbours = 3, PerMinute = 60 / ThirtyChannels.IntervalSeconds;
    static readonly Duration interval = Duration.FromSeconds(ThirtyChannels.IntervalSeconds);

    public static void Write(BenchStudio studio, int rawDays)
    {
        using var connection = studio.Store.OpenWriter();
        StudioStore.Run(connection, "PRAGMA synchronous=OFF");
        var channels = studio.Plan.Appliances.SelectMany(a => a.Channels).ToArray();
        using var series = Command(connection, "INSERT INTO series VALUES (@a, @b, @c)", 3);
        using var reading = Command(connection, "INSERT INTO reading VALUES (@a, @b, @c, 0)", 3);
        using var minute = Command(connection, "INSERT INTO minute VALUES (@a, @b, @c, @d, @e, @f)", 6);
        using var hour = Command(connection, "INSERT INTO hour VALUES (@a, @b, @c, @d, @e, @f, @g, @h, @i, @j)", 10);
        for (var i = 0; i < channels.Length; i++) Put(series, i + 1, channels[i].Id, channels[i].Quantity.CanonicalUnit());
        for (var h = 0; h < Days * 24; h++)
        {
            if (h % 24 == 0) StudioStore.Run(connection, "BEGIN");
            for (var i = 0; i < channels.Length; i++) Hour(i + 1, channels[i], Start + Duration.FromHours(h), isRaw: h >= (Days - rawDays) * 24);
            if (h % 24 == 23) StudioStore.Run(connection, "COMMIT");
        }

        void Hour(int id, ChannelPlan channel, Instant from, bool isRaw)
        {
            var to = from + Duration.FromHours(1);
            var samples = Samples(channel.Name, from - Neighbours * interval, Instant.Min(End, to + Neighbours * interval));
            if (isRaw) foreach (var sample in samples.Where(s => s.At >= from && s.At < to)) Put(reading, id, sample.At.ToMicroseconds(), sample.Value);
            for (var m = 0; m < 60; m++)
            {
                var around = samples.GetRange(m * PerMinute, Math.Min(samples.Count - m * PerMinute, PerMinute + 2 * Neighbours));
                var row = isRaw ? MinuteRow.Of(from + Duration.FromMinutes(m), around, channel)! : Plain(from + Duration.FromMinutes(m), around[Neighbours..(Neighbours + PerMinute)]);
                Put(minute, id, row.Minute.ToMicroseconds(), row.Mean, row.Min, row.Max, row.Count);
            }
            var sum = isRaw ? HourRow.Of(from, samples, channel) : Plain(from, samples.GetRange(Neighbours, 60 * PerMinute), 3600);
            Put(hour, id, sum.Hour.ToMicroseconds(), sum.Amount, sum.CoveredSeconds, sum.GapSeconds, sum.Mean!, sum.Min!, sum.Max!, sum.Count, sum.Resets);
        }
    }

    static List<Sample> Samples(string channel, Instant from, Instant to)
    {
        var samples = new List<Sample>(60 * PerMinute + 2 * Neighbours);
        for (var at = from; at < to; at += interval) samples.Add(new Sample(at, ThirtyChannels.Value(channel, at.ToUnixTimeSeconds() / ThirtyChannels.IntervalSeconds)));
        return samples;
    }

    /// <summary>Where the readings are gone nobody can check the row: a plain mean is as good to ask for.</summary>
    static MinuteRow Plain(Instant minute, List<Sample> inside) => new(minute, inside.Average(s => s.Value), inside.Min(s => s.Value), inside.Max(s => s.Value), inside.Count);

    static HourRow Plain(Instant hour, List<Sample> inside, double coveredSeconds)
    {
        var mean = inside.Average(s => s.Value);
        return new HourRow(hour, mean, coveredSeconds, 0, mean, inside.Min(s => s.Value), inside.Max(s => s.Value), inside.Count, 0);
    }

    static SqliteCommand Command(SqliteConnection connection, string sql, int parameters)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < parameters; i++) command.Parameters.Add(new SqliteParameter { ParameterName = $"@{(char)('a' + i)}" });
        return command;
    }

    static void Put(SqliteCommand command, params ReadOnlySpan<object> values)
    {
        for (var i = 0; i < values.Length; i++) command.Parameters[i].Value = values[i];
        command.ExecuteNonQuery();
    }
}
