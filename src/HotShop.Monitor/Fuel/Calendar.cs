using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>Hours, days and months of the studio's zone as stretches of time: days of 23 and 25 hours included. Pure.</summary>
static class Calendar
{
    /// <summary>Edges of the steps that touch [from, to); the first and last are the question's own.</summary>
    public static IReadOnlyList<Instant> Edges(Instant from, Instant to, FuelStep step, DateTimeZone zone)
    {
        if (to <= from) return [];
        var edges = new List<Instant> { from };
        for (var edge = Next(from, step, zone); edge < to; edge = Next(edge, step, zone)) edges.Add(edge);
        edges.Add(to);
        return edges;
    }

    static Instant Next(Instant after, FuelStep step, DateTimeZone zone)
    {
        if (step == FuelStep.Hour) return Instant.FromUnixTimeSeconds((after.ToUnixTimeSeconds() / 3600 + 1) * 3600);
        var day = after.InZone(zone).Date;
        var next = step == FuelStep.Day ? day.PlusDays(1) : day.With(DateAdjusters.StartOfMonth).PlusMonths(1);
        return zone.AtStartOfDay(next).ToInstant();
    }
}
