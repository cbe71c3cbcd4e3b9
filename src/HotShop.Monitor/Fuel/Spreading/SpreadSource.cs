using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>Gathers what a spread is made of: fires, rows of meters read and of meters that send, around a stretch of time.</summary>
sealed class SpreadSource(StudioPlan plan, MeterTree tree, FuelBook fuel, IReadingHistory history, LogbookBook logbook, ModeHistory modes, MeterLog readings)
{
    /// <summary>How far around the question readings are taken in: a furnace of six weeks ago is much the same.</summary>
    static readonly Duration Before = Duration.FromDays(45), After = Duration.FromDays(14);

    /// <summary>Appliances that the last spread was over.</summary>
    public IReadOnlyList<string> Over { get; private set; } = [];

    /// <returns>Null where every appliance has a sensor, or nothing is known but sums; and stretches between typed readings that are not of one register.</returns>
    public (Spread? Spread, IReadOnlyList<TypedStretch> Broken) Of(EnergyKind kind, Instant from, Instant to, Instant now)
    {
        Over = [];
        var (start, end) = (from - Before, Instant.Min(now, to + After));
        var typed = tree.Nodes.Where(n => n.Kind == kind && n.Channel.IsTyped).ToList();
        var byMode = plan.Appliances.Where(a => FireList.IsByMode(a, kind) && tree.Own(kind, a.Id) is null).ToList();
        if (byMode.Count == 0 && typed.Count == 0) return (null, []);

        var fires = Fires(kind, start, end, byMode);
        if (fires.Count == 0) return (null, []);
        var stretches = typed.Select(n => (Node: n, Stretches: TypedStretch.Of(readings.Of(n.Channel), n.Channel).Where(s => s.To > start && s.From < end).ToList())).ToList();
        var rows = stretches.SelectMany(t => t.Stretches.Where(s => s.Amount is not null).Select(s => Row(t.Node, s)))
            .Concat(tree.Nodes.Where(n => n.Kind == kind && !n.Channel.IsTyped && n.Appliances.Count > 1 && fires.Any(f => n.Appliances.Any(a => a.Id == f.Appliance))).SelectMany(n => Daily(n, start, end, now)))
            .Where(r => fires.Any(f => r.Serves.Contains(f.Appliance))).ToList();
        Over = [.. fires.Select(f => f.Appliance).Distinct()];
        return (new Spread(fires, Less(kind, rows, now)), [.. stretches.SelectMany(t => t.Stretches).Where(s => s.Amount is null)]);
    }

    List<Fire> Fires(EnergyKind kind, Instant start, Instant end, List<AppliancePlan> byMode)
    {
        var list = new FireList(history, modes, logbook.FirstAt(), start, end);
        var fires = new List<Fire>();
        foreach (var appliance in plan.Appliances.Where(a => a.Kind != ApplianceKind.Shop))
        {
            if (tree.Own(kind, appliance.Id) is { Channel.IsTyped: false }) continue;
            var own = list.Of(appliance, kind);
            fires.AddRange(own.Count == 0 && tree.Own(kind, appliance.Id) is not null ? [list.Evenly(appliance.Id)] : own);
        }
        if (tree.Main(kind) is { } main && plan.Appliance(main.Channel.Appliance) is { } shop
            && list.OfShop(shop, kind, isShared: byMode.Count > 0) is { } rest)
            fires.Add(rest);
        return fires;
    }

    MeterRow Row(MeterNode node, TypedStretch stretch)
    {
        var perUnit = node.Kind == EnergyKind.Electricity ? 1 : KilowattHoursPerLineCubicMetre(stretch.From, stretch.To);
        return new MeterRow(node.Channel.Id, stretch.From, stretch.To, stretch.Amount!.Value * perUnit, stretch.ReadingUncertainty * perUnit, Ids(node), node.Parent is null, []) { MeterRelative = FuelDoubt.Of(node.Channel) };
    }

    /// <summary>Where the gas changed between two readings, the mean over the time.</summary>
    double KilowattHoursPerLineCubicMetre(Instant from, Instant to)
    {
        List<Instant> edges = [.. fuel.Changes(from, to), to];
        return edges.Zip(edges.Skip(1), (a, b) => (b - a) / (to - from) * fuel.KilowattHoursPerLineCubicMetre(a)).Sum();
    }

    IEnumerable<MeterRow> Daily(MeterNode node, Instant start, Instant end, Instant now)
    {
        var edges = Calendar.Edges(start, end, FuelStep.Day, plan.Zone);
        foreach (var use in fuel.Along(node.Channel, edges, now))
            if (use.MeasuredShare > 0.98) yield return new MeterRow(node.Channel.Id, use.From, use.To, use.EnergyKilowattHours, 0.1 + 0.002 * use.EnergyKilowattHours, Ids(node), IsOutermost: false, []) { MeterRelative = FuelDoubt.Of(node.Channel) };
    }

    static HashSet<string> Ids(MeterNode node) => [.. node.Appliances.Select(a => a.Id)];

    /// <summary>With what the sensors behind each meter counted meanwhile.</summary>
    List<MeterRow> Less(EnergyKind kind, List<MeterRow> rows, Instant now)
    {
        if (rows.Count == 0) return rows;
        List<Instant> edges = [.. rows.SelectMany(r => new[] { r.From, r.To }).Distinct().Order()];
        foreach (var appliance in plan.Appliances.Where(a => tree.Own(kind, a.Id) is { Channel.IsTyped: false }))
        {
            var own = tree.Own(kind, appliance.Id)!.Channel;
            var uses = own.Appliance == appliance.Id ? fuel.Along(appliance, edges, now, kind) : fuel.Along(own, edges, now);
            rows = [.. rows.Select(r => r.Serves.Contains(appliance.Id) ? Without(r, appliance.Id, FuelDoubt.Of(own), [.. uses.Where(u => u.From >= r.From && u.To <= r.To)]) : r)];
        }
        return rows;
    }

    /// <summary>Time without readings makes a row less certain; the sensor's own error is the same in all of them.</summary>
    static MeterRow Without(MeterRow row, string appliance, double sensorRelative, IReadOnlyList<FuelUse> parts) => row with
    {
        Uncertainty = parts.Select(p => p.MissingUncertainty).Aggregate(row.Uncertainty, double.Hypot),
        Measured = [.. row.Measured, new MeteredPart(appliance, parts.Sum(p => p.Total.Value), sensorRelative)],
    };
}
