using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Wire;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>Compares a meter with the meters right behind it, over the last weeks in which all of them spoke.</summary>
sealed class MeterComparison(StudioPlan plan, StudioFuel studio, FuelBook fuel, MeterLog log)
{
    static readonly Duration Window = Duration.FromDays(35);

    /// <returns>Null where no meter lies behind it, something behind it has none, or one of them has not spoken for a day.</returns>
    public MeterAgainstAnswer? Of(MeterNode node, Instant now)
    {
        var behind = studio.Meters.Nodes.Where(n => n.Kind == node.Kind && n.Parent?.Id == node.Channel.Id).ToList();
        if (behind.Count == 0) return null;
        var spans = behind.Prepend(node).Select(n => Spoken(n, now)).ToList();
        var (from, to) = (spans.Max(s => s.From), spans.Min(s => s.To));
        if (to - from < Duration.FromDays(1)) return null;
        var own = Counted(node, from, to, now);
        var parts = behind.Select(n => Counted(n, from, to, now)).ToList();
        if (own is not > 0 || parts.Any(p => p is null)) return null;
        return Compare(from, to, Estimate.Relative(own.Value, FuelDoubt.Of(node.Channel)), [.. parts.Zip(behind, (p, n) => Estimate.Relative(p!.Value, FuelDoubt.Of(n.Channel)))],
            node.Kind == EnergyKind.Gas ? fuel.GasAt(from).EnergyRelative : 0, Unmetered(node, behind));
    }

    /// <summary>What a meter sent against its own register, as people read it in the last weeks.</summary>
    /// <returns>Null where it does not send its count, was not read twice, or was silent for more than a twentieth of the time.</returns>
    public MeterRegisterAnswer? AgainstRegister(MeterNode node, Instant now)
    {
        if (node.Channel.IsTyped || !node.Channel.Quantity.IsCumulative()) return null;
        var stretches = TypedStretch.Of([.. log.Of(node.Channel).Where(r => r.At > now - Window)], node.Channel);
        var known = stretches.Reverse().TakeWhile(s => s.Amount is not null).Reverse().ToList();
        if (known.Count == 0 || known.Sum(s => s.Amount!.Value) is var read && read <= 0) return null;
        var (from, to) = (known[0].From, known[^1].To);
        if (fuel.Along(node.Channel, [from, to], now)[0] is not { MeasuredShare: > 0.95 } sent) return null;
        var registered = read * (node.Kind == EnergyKind.Gas ? fuel.KilowattHoursPerLineCubicMetre(from) : 1);
        var share = sent.EnergyKilowattHours / registered - 1;
        // One meter, so its class is in both; what is left is the step to which it was read, and a percent for the moments of reading (common practice).
        var band = 0.01 + Quantiles.Normal95 * double.Hypot(known[0].ReadingUncertainty, known[^1].ReadingUncertainty) / read;
        var isBeyond = Math.Abs(share) > band;
        var much = Math.Abs(share) < 0.0005 ? "It sent as much as its register counted" : string.Create(CultureInfo.InvariantCulture, $"It sent {Math.Abs(share) * 100:0.0} % {(share < 0 ? "less" : "more")} than its register counted");
        var words = much + (isBeyond, share < 0) switch
            {
                (false, _) => string.Create(CultureInfo.InvariantCulture, $": within what reading it allows (±{band * 100:0.0} %)."),
                (_, true) => string.Create(CultureInfo.InvariantCulture, $" (±{band * 100:0.0} % would be usual). Are pulses lost, is the volume of a pulse too small, or is a reading wrong?"),
                _ => string.Create(CultureInfo.InvariantCulture, $" (±{band * 100:0.0} % would be usual). Does the contact bounce, is the volume of a pulse too large, or is a reading wrong?"),
            };
        return new MeterRegisterAnswer(from, to, share, share - band, share + band, band, isBeyond, words);
    }

    /// <param name="own">kWh, with the meter's own error alone.</param>
    /// <param name="parts">The same of the meters behind it.</param>
    static MeterAgainstAnswer Compare(Instant from, Instant to, Estimate own, List<Estimate> parts, double gasRelative, List<string> unmetered)
    {
        // Independent meters; the gas in them is the same.
        var sum = parts.Aggregate((a, b) => a + b);
        var band = Quantiles.Normal95 * (sum - own).StandardUncertainty / own.Value;
        var share = sum.Value / own.Value - 1;
        // Whatever burns without a meter of its own makes the meters behind count less, never more.
        var isBeyond = share > band || (unmetered.Count == 0 && share < -band);
        var words = string.Create(CultureInfo.InvariantCulture, $"The meters behind it count {Math.Abs(share) * 100:0.0} % {(share < 0 ? "less" : "more")}");
        words += (isBeyond, unmetered.Count) switch
        {
            (false, 0) => string.Create(CultureInfo.InvariantCulture, $": within what meters of their class may differ (±{band * 100:0.0} %)."),
            (false, _) when share < -band => $": {string.Join(" and ", unmetered)} and whatever else burns behind it without a meter.",
            (false, _) => string.Create(CultureInfo.InvariantCulture, $": so little is left for {string.Join(" and ", unmetered)} that it is within what the meters may differ (±{band * 100:0.0} %)."),
            _ when share < 0 => string.Create(CultureInfo.InvariantCulture, $", more than their class explains (±{band * 100:0.0} %). Is something else behind this meter, is a pulse lost, or a reading wrong? If you smell gas, leave and call the gas emergency line; pipes are work for a licensed person."),
            _ => string.Create(CultureInfo.InvariantCulture, $", more than their class explains (±{band * 100:0.0} %). Check the volume of a pulse, a sensor's factor and the readings; a meter itself is the utility's to check."),
        };
        // What the gas is in doubt for is in both energies, and in no difference.
        var (ownKwh, behindKwh) = (own * Estimate.Relative(1, gasRelative), sum * Estimate.Relative(1, gasRelative));
        return new MeterAgainstAnswer(from, to, own.Value, ownKwh.Low95, ownKwh.High95, sum.Value, behindKwh.Low95, behindKwh.High95, share, share - band, share + band, band, isBeyond, words);
    }

    static List<string> Unmetered(MeterNode node, List<MeterNode> behind) =>
        [.. node.Appliances.Where(a => a.Kind != ApplianceKind.Shop && !behind.Any(b => b.Appliances.Any(s => s.Id == a.Id)) && BurnsOf(a, node.Kind)).Select(a => a.Name)];

    static bool BurnsOf(AppliancePlan appliance, EnergyKind kind) =>
        FuelSource.Of(appliance).Any(s => s.Kind == kind) || Spreading.FireList.EnergyOf(appliance) == kind;

    (Instant From, Instant To) Spoken(MeterNode node, Instant now)
    {
        if (!node.Channel.IsTyped) return (plan.Zone.AtStartOfDay((now - Window).InZone(plan.Zone).Date).ToInstant(), plan.Zone.AtStartOfDay(now.InZone(plan.Zone).Date).ToInstant());
        var readings = log.Of(node.Channel).Where(r => r.At > now - Window).ToList();
        return readings.Count < 2 ? (now, now) : (readings[0].At, readings[^1].At);
    }

    /// <summary>kWh; null where a sensor was silent for more than a twentieth of the time, or typed readings do not span it.</summary>
    double? Counted(MeterNode node, Instant from, Instant to, Instant now)
    {
        if (!node.Channel.IsTyped) return fuel.Along(node.Channel, [from, to], now)[0] is { MeasuredShare: > 0.95 } use ? use.EnergyKilowattHours / use.MeasuredShare : null;
        var stretches = TypedStretch.Of(log.Of(node.Channel), node.Channel).Where(s => s.From < to && s.To > from).ToList();
        if (stretches.Count == 0 || stretches[0].From > from || stretches[^1].To < to || stretches.Any(s => s.Amount is null)) return null;
        // A stretch that reaches over the ends counts in proportion: meters read on one walk hardly do.
        return stretches.Sum(s => s.Amount!.Value * ((Instant.Min(s.To, to) - Instant.Max(s.From, from)) / (s.To - s.From)) * (node.Kind == EnergyKind.Gas ? fuel.KilowattHoursPerLineCubicMetre(s.From) : 1));
    }
}
