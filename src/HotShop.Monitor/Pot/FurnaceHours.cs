using HotShop.Monitor.Fuel;
using HotShop.Monitor.Readings;
using HotShop.Physics.Melting;
using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>A charge as the log has it.</summary>
/// <param name="Glass">The same glass, with what is in doubt about it.</param>
sealed record LoggedCharge(Instant At, double GlassKilograms, bool IsBatch, Budget Glass);

/// <summary>Puts what meters and log say of a furnace together by the hour. Pure.</summary>
static class FurnaceHours
{
    /// <summary>A little may be missing at an hour's edge; a counter that was silent knows its total.</summary>
    const double LeastMeasured = 0.98;

    /// <param name="uses">By whole hours, in order.</param>
    /// <param name="setpoints">Hour rows of the setpoint; none where there is no such channel.</param>
    /// <param name="days">Days at the pot: a worked one of which nobody logged anything hides gathers.</param>
    public static IReadOnlyList<FurnaceHour> Of(
        IReadOnlyList<FuelUse> uses, IReadOnlyList<HourRow> setpoints, IReadOnlyList<LoggedCharge> charges, IReadOnlyList<PotEvent> events, IReadOnlyList<PotDay> days)
    {
        var celsius = setpoints.Where(r => r.Mean is not null).ToDictionary(r => r.Hour, r => r.Mean);
        var charged = charges.ToLookup(c => StartOf(c.At));
        var gathers = Gathers(events);
        var hidden = days.Where(d => !d.IsLogged && d.Worked > Duration.Zero).Select(d => new Interval(d.From, d.To)).ToList();
        return [.. uses.Select(use => new FurnaceHour(
            use.From, IsMeasured(use) ? use.Total.Value : null, celsius.GetValueOrDefault(use.From),
            charged[use.From].Sum(c => c.GlassKilograms), charged[use.From].Where(c => c.IsBatch).Sum(c => c.GlassKilograms), gathers.GetValueOrDefault(use.From),
            hidden.Exists(span => span.Start < use.To && use.From < span.End)))];
    }

    public static bool IsMeasured(FuelUse use) => use.MeasuredShare >= LeastMeasured || (use.MeasuredShare == 0 && use.EstimatedKilowattHours > 0);

    static Instant StartOf(Instant at) => Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds() / 3600 * 3600);

    static Dictionary<Instant, double> Gathers(IReadOnlyList<PotEvent> events)
    {
        var byHour = new Dictionary<Instant, double>();
        var tallies = events.OfType<PotEvent.Tally>().ToList();
        foreach (var happened in events)
            if (happened is PotEvent.Gather gather && !tallies.Exists(t => gather.At >= t.From && gather.At <= t.To)) Add(gather.At, gather.Count);
            else if (happened is PotEvent.WeighedGather weighed) Add(weighed.At, 1);
        foreach (var tally in tallies) Spread(tally);
        return byHour;

        void Add(Instant at, double count) => byHour[StartOf(at)] = byHour.GetValueOrDefault(StartOf(at)) + count;

        // A tally says how many, not when: evenly over its span.
        void Spread(PotEvent.Tally tally)
        {
            var each = tally.Counts.Sum(c => c.Count) / Math.Max(1, (tally.To - tally.From).TotalHours);
            for (var at = tally.From; at < tally.To; at += Duration.FromHours(1)) Add(at, each * Math.Min(1, (tally.To - at).TotalHours));
        }
    }
}
