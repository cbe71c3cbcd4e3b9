using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>What an hour of a series adds up to.</summary>
/// <param name="Amount">Integral in (unit × hours), or for a counter what passed, over the covered seconds.</param>
/// <param name="GapSeconds">Covered only in total: a counter's reading before and after a gap.</param>
/// <param name="Resets">Times the counter lost its thread in this hour.</param>
public sealed record HourRow(Instant Hour, double Amount, double CoveredSeconds, double GapSeconds, double? Mean, double? Min, double? Max, int Count, int Resets)
{
    /// <summary>Nothing was measured in it.</summary>
    public bool IsEmpty => Count == 0 && CoveredSeconds == 0;

    /// <param name="samples">Time-sorted, with three neighbours on each side where there are any.</param>
    public static HourRow Of(Instant hour, IReadOnlyList<Sample> samples, ChannelPlan channel) =>
        Between(hour, hour + Duration.FromHours(1), samples, channel);

    /// <summary>The same for a part of an hour; <see cref="Hour"/> is then its start.</summary>
    public static HourRow Between(Instant hour, Instant end, IReadOnlyList<Sample> samples, ChannelPlan channel)
    {
        var total = HourIntegral.Of(hour, end, samples, channel.Quantity.CourseOf(), channel.LongestGap);
        if (!channel.Quantity.IsCumulative())
            return new HourRow(hour, total.IntegralHours, total.CoveredSeconds, 0, total.TimeWeightedMean, total.Min, total.Max, total.Count, 0);
        var meter = CumulativeMeter.Between(hour, end, samples, new MeterTraits(channel.CounterDigits, channel.CounterMaximumPerHour, channel.LongestGap));
        return new HourRow(hour, meter.Amount, meter.CoveredSeconds, meter.GapSeconds, null, total.Min, total.Max, total.Count, meter.Resets.Count);
    }

    internal void Write(int series, WriteScope scope) =>
        scope.Execute("INSERT OR REPLACE INTO hour VALUES ($series, $hour, $amount, $covered, $gap, $mean, $min, $max, $count, $resets)",
            ("$series", series), ("$hour", Hour.ToMicroseconds()), ("$amount", Amount), ("$covered", CoveredSeconds), ("$gap", GapSeconds),
            ("$mean", Mean), ("$min", Min), ("$max", Max), ("$count", Count), ("$resets", Resets));

    /// <summary>A share of the hour in proportion, for a part of it whose raw readings are gone. Resets count where they are not lost: with the first share.</summary>
    internal HourRow Share(Instant start, double share) => this with
    {
        Hour = start, Amount = Amount * share, CoveredSeconds = CoveredSeconds * share, GapSeconds = GapSeconds * share, Resets = start == Hour ? Resets : 0,
    };

    /// <summary>Samples that the kept row of an hour speaks for; 0 where there is no row.</summary>
    internal static int CountOf(int series, Instant hour, WriteScope scope)
    {
        using var command = scope.Command("SELECT count FROM hour WHERE series = $series AND hour = $hour", ("$series", series), ("$hour", hour.ToMicroseconds()));
        return command.ExecuteScalar() is long count ? (int)count : 0;
    }

    internal static HourRow Read(SqliteDataReader row, int first) => new(
        row.GetInstant(first), row.GetDouble(first + 1), row.GetDouble(first + 2), row.GetDouble(first + 3),
        row.GetNumberOrNull(first + 4), row.GetNumberOrNull(first + 5), row.GetNumberOrNull(first + 6), row.GetInt32(first + 7), row.GetInt32(first + 8));
}
