using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
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

    internal void Write(int series, WriteScope scope) =>
        scope.Execute("INSERT OR REPLACE INTO minute VALUES ($series, $minute, $mean, $min, $max, $count)",
            ("$series", series), ("$minute", Minute.ToMicroseconds()), ("$mean", Mean), ("$min", Min), ("$max", Max), ("$count", Count));
}
