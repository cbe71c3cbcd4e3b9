using NodaTime;

namespace HotShop.Physics.Melting;

/// <summary>A furnace's day, from one settled morning to the next, so that a charge and the heat it takes fall into the same day.</summary>
/// <param name="Hours">Measured ones.</param>
/// <param name="KilowattHours">Burnt in them, gross.</param>
/// <param name="HoldingKilowattHours">What holding alone would have burnt in them.</param>
/// <param name="ChargedKilograms">Glass that the day's charges leave.</param>
/// <param name="ReactingKilograms">Part of it from batch.</param>
public sealed record MeltingDay(
    Instant From, Instant To, double Hours, double KilowattHours, double HoldingKilowattHours, double ChargedKilograms, double ReactingKilograms)
{
    public double AboveHoldingKilowattHours => KilowattHours - HoldingKilowattHours;

    public bool IsCharged => ChargedKilograms > 0;

    /// <summary>A day with more of it unmeasured is left out: what was burnt for its charge is not known.</summary>
    const double LeastShareMeasured = 0.95;

    /// <summary>Days between the edges of which enough was measured.</summary>
    /// <param name="edges">Ascending; what lies outside them is left out.</param>
    public static IReadOnlyList<MeltingDay> Between(IReadOnlyList<HeldHour> hours, IReadOnlyList<Instant> edges, HoldingFit holding)
    {
        ArgumentNullException.ThrowIfNull(hours);
        ArgumentNullException.ThrowIfNull(edges);
        ArgumentNullException.ThrowIfNull(holding);
        var days = new List<MeltingDay>();
        var next = 0;
        for (var i = 0; i + 1 < edges.Count; i++)
        {
            while (next < hours.Count && hours[next].Hour.From < edges[i]) next++;
            var first = next;
            while (next < hours.Count && hours[next].Hour.From < edges[i + 1]) next++;
            var own = hours.Skip(first).Take(next - first).ToList();
            var measured = own.Where(h => h.Hour.KilowattHours is not null).ToList();
            if (measured.Count < LeastShareMeasured * (edges[i + 1] - edges[i]).TotalHours) continue;
            days.Add(new(edges[i], edges[i + 1], measured.Count, measured.Sum(h => h.Hour.KilowattHours!.Value),
                measured.Sum(h => holding.Kilowatts(h.HeldCelsius).Value), own.Sum(h => h.Hour.ChargedKilograms), own.Sum(h => h.Hour.ReactingKilograms)));
        }
        return days;
    }

    /// <summary>
    /// The hour of the day at which days are best cut: the usual charges have melted, walls are at rest, and work has not begun, so that a charge's heat stays in
    /// its day, and with it the gathers that made room for it.
    /// </summary>
    /// <param name="charges">Hour of the local day, 0 to 23, and glass, kg.</param>
    /// <param name="gathers">Hour of the local day, 0 to 23, and number.</param>
    public static int EdgeHour(IEnumerable<(int Hour, double Kilograms)> charges, IEnumerable<(int Hour, double Count)> gathers)
    {
        var (charged, gathered) = (ByHour(charges), ByHour(gathers));
        var stillMelting = Enumerable.Range(0, 24).Select(edge => Enumerable.Range(1, HeldHours.HoursToMelt).Sum(back => charged[(edge - back + 24) % 24])).ToArray();
        var least = stillMelting.Min() + 1e-9;
        var edge = Enumerable.Range(0, 24).Where(e => stillMelting[e] <= least).OrderByDescending(e => stillMelting[(e + 23) % 24] > least).ThenBy(e => e).First();
        var few = WorkBegins * gathered.Sum();
        for (var i = 0; i < HeldHours.HoursToSettle && stillMelting[(edge + 1) % 24] <= least && gathered[edge] <= few; i++) edge = (edge + 1) % 24;
        return edge;
    }

    /// <summary>Share of a day's gathers in an hour with which work has begun.</summary>
    const double WorkBegins = 0.02;

    static double[] ByHour(IEnumerable<(int Hour, double Amount)> amounts)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        var byHour = new double[24];
        foreach (var (hour, amount) in amounts) byHour[hour] += amount;
        return byHour;
    }
}
