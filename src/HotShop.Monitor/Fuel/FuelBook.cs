using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Fuel;

public enum FuelStep { Hour, Day, Month }

/// <summary>Adds up energy from hour rows. Hours that are not closed are computed on the spot, so a question is always answered with what is true now.</summary>
/// <param name="plans">What was in force when: fuel of last month keeps last month's heating value.</param>
public sealed class FuelBook(StudioPlan plan, IReadingHistory history, PlanHistory plans)
{
    readonly StudioGas gas = new(plan.Configuration.Gas);
    readonly PriceList prices = new(plan.Configuration.Prices, new StudioGas(plan.Configuration.Gas));

    public StudioGas Gas => gas;
    public PriceList Prices => prices;

    /// <summary>Use in [from, to) by hour, day or month of the studio's zone; stretches at the ends are cut to the question.</summary>
    /// <param name="now">Time not yet passed is not missing.</param>
    /// <param name="only">One kind of energy; both where it is left out.</param>
    public IReadOnlyList<FuelUse> Use(AppliancePlan appliance, Instant from, Instant to, FuelStep step, Instant now, EnergyKind? only = null)
    {
        var edges = Calendar.Edges(from, Instant.Min(to, Instant.Max(from, now)), step, plan.Zone);
        if (edges.Count < 2) return [];
        var lines = Lines(appliance, edges[0], edges[^1], only);
        return [.. edges.Zip(edges.Skip(1), (start, end) => Sum(lines, start, end, now))];
    }

    /// <summary>The same between each two neighbours of a list of moments, in order.</summary>
    internal IReadOnlyList<FuelUse> Along(AppliancePlan appliance, IReadOnlyList<Instant> edges, Instant now, EnergyKind only)
    {
        if (edges.Count < 2) return [];
        var lines = Lines(appliance, edges[0], edges[^1], only);
        return [.. edges.Zip(edges.Skip(1), (start, end) => Sum(lines, start, end, now))];
    }

    /// <summary>The same of one meter, whoever it serves.</summary>
    internal IReadOnlyList<FuelUse> Along(ChannelPlan meter, IReadOnlyList<Instant> edges, Instant now)
    {
        if (edges.Count < 2) return [];
        var lines = plans.Between(edges[0], edges[^1]).Select(stretch => new FuelLine(
            new FuelSource(stretch.Plan.Channels.Find(meter.Id) ?? meter, MeterTree.KindOf(meter.Quantity)!.Value, IsMeasured: true), new StudioGas(stretch.Plan.Configuration.Gas),
            stretch.From, stretch.To, history.Hours(meter, stretch.From - Duration.FromHours(1), stretch.To))).ToList();
        return [.. edges.Zip(edges.Skip(1), (start, end) => Sum(lines, start, end, now))];
    }

    /// <summary>The gas as it was described at a moment.</summary>
    internal StudioGas GasAt(Instant at) => plans.At(at) is var then && ReferenceEquals(then, plan) ? gas : new StudioGas(then.Configuration.Gas);

    /// <summary>Gross kWh of a cubic metre as the meter counts it, at a moment.</summary>
    internal double KilowattHoursPerLineCubicMetre(Instant at) => GasAt(at) is var then ? then.Fuel.GrossKilowattHours(then.ToBase(1)) : 0;

    /// <summary>Moments in [from, to) at which the configuration changed.</summary>
    internal IEnumerable<Instant> Changes(Instant from, Instant to) => plans.Between(from, to).Select(s => s.From);

    /// <summary>The same over one stretch.</summary>
    public FuelUse Between(AppliancePlan appliance, Instant from, Instant to, Instant now)
    {
        var end = Instant.Max(from, Instant.Min(to, now));
        return Sum(Lines(appliance, from, end), from, end, now);
    }

    List<FuelLine> Lines(AppliancePlan appliance, Instant from, Instant to, EnergyKind? only = null) =>
        [.. plans.Between(from, to).SelectMany(stretch => FuelSource.Of(stretch.Plan.Appliance(appliance.Id) ?? appliance, Speaking(stretch))
            .Where(s => only is null || s.Kind == only).Select(s => new FuelLine(s, new StudioGas(stretch.Plan.Configuration.Gas), stretch.From, stretch.To, history.Hours(s.Channel, stretch.From - Duration.FromHours(1), stretch.To))))];

    /// <summary>A meter that took the place of another is not the one to ask about the time before it.</summary>
    Func<ChannelPlan, bool>? Speaking(PlanStretch stretch) =>
        ReferenceEquals(stretch.Plan, plans.Today) ? null : channel => history.Hours(channel, stretch.From, stretch.To).Count > 0;

    FuelUse Sum(List<FuelLine> lines, Instant from, Instant to, Instant now)
    {
        var sum = new UseSum();
        var askedSeconds = 0.0;
        foreach (var (source, gasThen, lineFrom, lineTo, hours) in lines)
        {
            var (start, end) = (Instant.Max(from, lineFrom), Instant.Min(to, lineTo));
            if (start >= end) continue;
            if (source.IsMeasured) askedSeconds += (end - start).TotalSeconds;
            foreach (var hour in hours.Touching(start, end).SelectMany(whole => Parts(source, whole, start, end, now)))
            {
                var (energy, cubicMetres) = source.EnergyOf(hour, gasThen);
                sum.Add(source, gasThen, hour, energy, cubicMetres ?? 0, prices.CostOf(source.Kind, energy, hour.Hour.InZone(plan.Zone).Date));
            }
        }
        return new FuelUse(from, to, sum.MeasuredKilowattHours, sum.EstimatedKilowattHours, sum.BaseCubicMetres,
            sum.Cost is { } amount ? Math.Round(amount, 2, MidpointRounding.ToEven) : null, sum.CarbonDioxideKilograms,
            askedSeconds > 0 ? Math.Min(1, sum.CoveredSeconds / askedSeconds) : 0, sum.Resets) { Doubt = sum.Doubt };
    }

    /// <summary>An hour row cut to [from, to), and at midnight where the zone is off by half an hour: a new price begins there.</summary>
    IEnumerable<HourRow> Parts(FuelSource source, HourRow whole, Instant from, Instant to, Instant now)
    {
        var start = Instant.Max(whole.Hour, from);
        var end = Instant.Min(whole.Hour + Duration.FromHours(1), to);
        var midnight = plan.Zone.AtStartOfDay(start.InZone(plan.Zone).Date.PlusDays(1)).ToInstant();
        if (midnight >= end) return [Part(source, whole, start, end, now)];
        return [Part(source, whole, start, midnight, now), Part(source, whole, midnight, end, now)];
    }

    /// <summary>From the raw readings, as an hour is not burnt evenly; in proportion where they are no longer kept.</summary>
    HourRow Part(FuelSource source, HourRow whole, Instant start, Instant end, Instant now)
    {
        if (end - start == Duration.FromHours(1)) return whole;
        var isRawKept = whole.Hour >= now - Duration.FromDays(plan.Configuration.Store.RawDays);
        return isRawKept ? history.Part(source.Channel, start, end) : whole.Share(start, (end - start).TotalHours);
    }
}
