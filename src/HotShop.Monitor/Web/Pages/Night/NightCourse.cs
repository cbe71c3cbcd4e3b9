using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Night;

/// <summary>A value at a moment, as drawn on the night page.</summary>
internal readonly record struct NightPoint(Instant At, double Value);

/// <summary>Where a value goes if it goes on as in the last minutes: the line of least squares and its 95 % prediction.</summary>
/// <param name="PerHour">Change in an hour, in the unit of the value.</param>
internal sealed record NightCourse(Instant From, double Value, double PerHour, double StandardDeviation, double MeanHour, double SumOfSquares, int Count)
{
    /// <summary>What the course is read from: shorter is noise, longer is another story.</summary>
    public static readonly Duration Looked = Duration.FromMinutes(15);

    const int FewestPoints = 5;

    /// <returns>Null where fewer than five readings lie in the last quarter of an hour, or all at one moment.</returns>
    public static NightCourse? Of(IEnumerable<NightPoint> points, Instant now)
    {
        var recent = points.Where(p => p.At > now - Looked && p.At <= now).ToList();
        if (recent.Count < FewestPoints) return null;
        var hours = recent.Select(p => (p.At - now).TotalHours).ToList();
        var (meanHour, mean) = (hours.Average(), recent.Average(p => p.Value));
        var squares = hours.Sum(h => (h - meanHour) * (h - meanHour));
        if (squares <= 0) return null;
        var slope = hours.Zip(recent, (h, p) => (h - meanHour) * (p.Value - mean)).Sum() / squares;
        var rest = hours.Zip(recent, (h, p) => p.Value - mean - slope * (h - meanHour)).Sum(r => r * r);
        return new NightCourse(now, mean - slope * meanHour, slope, Math.Sqrt(rest / (recent.Count - 2)), meanHour, squares, recent.Count);
    }

    /// <summary>Value and half-width of the 95 % prediction so far ahead.</summary>
    public (double Value, double HalfWidth) After(Duration ahead)
    {
        var hours = ahead.TotalHours;
        var spread = StandardDeviation * Math.Sqrt(1 + 1.0 / Count + (hours - MeanHour) * (hours - MeanHour) / SumOfSquares);
        return (Value + PerHour * hours, Quantiles.StudentT(0.975, Count - 2) * spread);
    }

    /// <summary>When the course reaches a value; null when it goes the other way or stands.</summary>
    public Instant? Reaches(double value)
    {
        if (PerHour == 0) return null;
        var hours = (value - Value) / PerHour;
        return hours > 0 && hours < 48 ? From + Duration.FromHours(hours) : null;
    }
}
