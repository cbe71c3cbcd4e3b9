using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>A minute of a series: time-weighted mean, extremes and number of samples. None where there was no sample.</summary>
public sealed record MinuteRow(Instant Minute, double Mean, double Min, double Max, int Count)
{
    /// <param name="samples">Time-sorted, with neighbours.</param>
    internal static MinuteRow? Of(Instant minute, IReadOnlyList<Sample> samples, ChannelPlan channel)
    {
        var inside = 0;
        double sum = 0, min = double.PositiveInfinity, max = double.NegativeInfinity;
        foreach (var sample in samples)
        {
            if (sample.At < minute || sample.At >= minute + Duration.FromMinutes(1)) continue;
            inside++;
            sum += sample.Value;
            min = Math.Min(min, sample.Value);
            max = Math.Max(max, sample.Value);
        }
        if (inside == 0) return null;
        // A counter's mean says nothing; its plain average is kept so that a chart has something to draw.
        var mean = channel.Quantity.IsCumulative() ? sum / inside
            : HourIntegral.Of(minute, minute + Duration.FromMinutes(1), samples, channel.Quantity.CourseOf(), channel.LongestGap).TimeWeightedMean ?? sum / inside;
        return new MinuteRow(minute, mean, min, max, inside);
    }

    /// <summary>Kept rows in [from, to), in order.</summary>
    internal static List<MinuteRow> Read(SqliteConnection connection, int series, Instant from, Instant to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT minute, mean, min, max, count FROM minute WHERE series = $series AND minute >= $from AND minute < $to ORDER BY minute";
        command.Parameters.AddWithValue("$series", series);
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        using var rows = command.ExecuteReader();
        var list = new List<MinuteRow>();
        while (rows.Read()) list.Add(new MinuteRow(rows.GetInstant(0), rows.GetDouble(1), rows.GetDouble(2), rows.GetDouble(3), rows.GetInt32(4)));
        return list;
    }

    internal void Write(int series, WriteScope scope) =>
        scope.Execute("INSERT OR REPLACE INTO minute VALUES ($series, $minute, $mean, $min, $max, $count)",
            ("$series", series), ("$minute", Minute.ToMicroseconds()), ("$mean", Mean), ("$min", Min), ("$max", Max), ("$count", Count));
}
