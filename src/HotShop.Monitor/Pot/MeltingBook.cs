using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>Fuel per kilogram three ways, from the hours of a furnace and its log; nothing of it is kept.</summary>
public sealed class MeltingBook(StudioPlan plan, PotBook pots, FuelBook fuel, IReadingHistory history)
{
    /// <summary>Days before a question's first, so that its first hours know what went before them.</summary>
    static readonly Duration LeadIn = Duration.FromDays(2);

    const int BaselineDays = 90;

    /// <summary>Over the whole days in [from, to).</summary>
    /// <param name="furnace">With a pot.</param>
    /// <returns><see langword="null"/> where the appliance has no pot.</returns>
    public MeltingReport? Of(AppliancePlan furnace, Instant from, Instant to, Instant now)
    {
        if (pots.Find(furnace.Id) is not { } pot) return null;
        var stretch = Read(furnace, pot, from, Instant.Min(to, now), now);
        var holding = HoldingFit.Of(stretch.Within);
        if (holding is null)
            return new MeltingReport(stretch.From, stretch.To, null, null, null, MeltingWords.NoHolding(stretch.Within), MeltingWords.NeedsHolding, MeltingWords.NeedsHolding, stretch.Note);
        var days = MeltingDay.Between(stretch.Hours, stretch.Edges, holding);
        if (MeltingLine.Of(stretch.Hours, days, holding, stretch.Doubt) is { } line)
            return new MeltingReport(stretch.From, stretch.To, line.Holding, line.HeldCelsius, line, null, null, line.NextKilogram is null ? MeltingWords.NoSlope(line) : null, stretch.Note);
        var celsius = stretch.Within.Select(h => h.HeldCelsius).OfType<double>().Cast<double?>().Average();
        var power = holding.Kilowatts(celsius);
        return new MeltingReport(stretch.From, stretch.To, power with { StandardUncertainty = double.Hypot(power.StandardUncertainty, power.Value * stretch.Doubt.Energy) }, celsius, null,
            null, MeltingWords.NoMelting(days), MeltingWords.NoMelting(days), stretch.Note);
    }

    /// <summary>The whole days in [from, to) against the line of the ninety days before them.</summary>
    /// <returns><see langword="null"/> where those do not make a line, or these hold no whole day.</returns>
    public MeltingComparison? Compare(AppliancePlan furnace, Instant from, Instant to, Instant now)
    {
        if (pots.Find(furnace.Id) is not { } pot) return null;
        var baselineFrom = (from.InZone(plan.Zone).Date.PlusDays(-BaselineDays)).AtStartOfDayInZone(plan.Zone).ToInstant();
        var before = Read(furnace, pot, baselineFrom, Instant.Min(from, now), now);
        if (HoldingFit.Of(before.Within) is not { } holding) return null;
        if (MeltingLine.Of(before.Hours, MeltingDay.Between(before.Hours, before.Edges, holding), holding, before.Doubt) is not { } line) return null;
        var here = Read(furnace, pot, from, Instant.Min(to, now), now, before.EdgeHour);
        var days = MeltingDay.Between(here.Hours, here.Edges, holding);
        if (days.Count == 0 || line.Expected(days) is not { } expected) return null;
        var running = RunningDifference.Of([.. days.Select(d => d.KilowattHours)], [.. days.Select(d => line.Expected([d])!.Value.Value)]);
        return new MeltingComparison(line, days, days.Sum(d => d.KilowattHours), expected, line.Saved(days)!.Value,
            [.. running.Select((value, i) => line.Saved([.. days.Take(i + 1)])!.Value with { Value = value })]);
    }

    /// <summary>A furnace's hours, with some before them, cut into days.</summary>
    sealed record Stretch(IReadOnlyList<HeldHour> Hours, IReadOnlyList<Instant> Edges, int EdgeHour, CommonDoubt Doubt, string? Note, Instant Start)
    {
        public Instant From => Edges.Count > 0 ? Edges[0] : Start;
        public Instant To => Edges.Count > 0 ? Edges[^1] : Start;
        public IReadOnlyList<HeldHour> Within { get; } = [.. Hours.Where(h => h.Hour.From >= Start)];
    }

    Stretch Read(AppliancePlan furnace, PotPlan pot, Instant from, Instant to, Instant now, int? edgeHour = null)
    {
        var start = Instant.FromUnixTimeSeconds((from.ToUnixTimeSeconds() + 3599) / 3600 * 3600);
        var first = start - LeadIn;
        var end = Instant.Max(start, Instant.FromUnixTimeSeconds(to.ToUnixTimeSeconds() / 3600 * 3600));
        var entries = pots.Entries(furnace.Id);
        var charges = LoggedCharges.Of(entries, pot, first, end);
        var uses = fuel.Use(furnace, first, end, FuelStep.Hour, now);
        var setpoints = furnace.Channel(Quantity.Setpoint) is { } channel ? history.Hours(channel, first, end) : [];
        var days = pots.Days(furnace.Id, end).Where(d => d.To > first).ToList();
        var events = PotLog.Events(entries.Where(e => e.At >= first && e.At < end + Duration.FromDays(1)), pot);
        var together = FurnaceHours.Of(uses, setpoints, charges, events, days);
        var hours = HeldHours.Of(together);
        var own = charges.Where(c => c.At >= start).ToList();
        var hour = edgeHour ?? MeltingDay.EdgeHour(own.Select(c => (c.At.InZone(plan.Zone).Hour, c.GlassKilograms)), together.Select(h => (h.From.InZone(plan.Zone).Hour, h.Gathers)));
        return new Stretch(hours, Edges(start, end, hour), hour, new CommonDoubt(Relative(uses), LoggedCharges.Relative(own)),
            days.Exists(d => d.IsLogged) ? null : MeltingWords.NoGathers, start);
    }

    List<Instant> Edges(Instant from, Instant to, int hour)
    {
        var edges = new List<Instant>();
        for (var date = from.InZone(plan.Zone).Date; ; date = date.PlusDays(1))
        {
            var edge = date.At(new LocalTime(hour, 0)).InZoneLeniently(plan.Zone).ToInstant();
            if (edge > to) return edges;
            if (edge >= from) edges.Add(edge);
        }
    }

    /// <summary>One meter serves all hours: its relative uncertainty is that of any of them.</summary>
    static double Relative(IReadOnlyList<FuelUse> uses)
    {
        var measured = uses.Where(FurnaceHours.IsMeasured).Select(u => u.Total).ToList();
        var energy = measured.Sum(t => t.Value);
        return energy > 0 ? measured.Sum(t => t.StandardUncertainty) / energy : 0;
    }
}
