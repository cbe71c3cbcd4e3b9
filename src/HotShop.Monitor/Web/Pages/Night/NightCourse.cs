using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Night;

/// <summary>A value at a moment, as drawn on the night page.</summary>
internal readonly record struct NightPoint(Instant At, double Value);

/// <summary>Where a value goes if it goes on as in the last minutes: the line of least squares over hours from now, and its 95 % prediction.</summary>
internal sealed record NightCourse(Instant From, LinearFit Line)
{
    /// <summary>What the course is read from: shorter is noise, longer is another story.</summary>
    public static readonly Duration Looked = Duration.FromMinutes(15);

    const int FewestPoints = 5;

    /// <summary>On the line, now.</summary>
    public double Value => Line.Coefficients[0];

    /// <summary>Change in an hour, in the unit of the value.</summary>
    public double PerHour => Line.Coefficients[1];

    /// <returns>Null where fewer than five readings lie in the last quarter of an hour, or all at one moment.</returns>
    public static NightCourse? Of(IEnumerable<NightPoint> points, Instant now)
    {
        var recent = points.Where(p => p.At > now - Looked && p.At <= now).ToList();
        return recent.Count >= FewestPoints && LinearFit.Line([.. recent.Select(p => (p.At - now).TotalHours)], [.. recent.Select(p => p.Value)]) is { } line ? new NightCourse(now, line) : null;
    }

    /// <summary>Value and half-width of the 95 % prediction so far ahead.</summary>
    public (double Value, double HalfWidth) After(Duration ahead) => Line.Next(1, ahead.TotalHours) is var next ? (next.Value, next.HalfWidth95) : default;

    /// <summary>When the course reaches a value; null when it goes the other way or stands.</summary>
    public Instant? Reaches(double value)
    {
        if (PerHour == 0) return null;
        var hours = (value - Value) / PerHour;
        return hours > 0 && hours < 48 ? From + Duration.FromHours(hours) : null;
    }
}
