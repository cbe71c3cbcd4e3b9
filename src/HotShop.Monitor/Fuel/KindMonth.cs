using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel.Spreading;
using HotShop.Monitor.Wire;
using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>
/// One kind of energy in steps of one calendar month. Everything is worked out piece by piece (a day, or less where a step or the configuration cuts it), so that
/// the days make the month.
/// </summary>
sealed class KindMonth
{
    readonly EnergyKind kind;
    readonly FuelBook fuel;
    readonly MeterNode? main;
    readonly List<Instant> pieces;
    readonly IReadOnlyList<FuelUse>? mainUses;
    readonly Dictionary<string, IReadOnlyList<FuelUse>> sensed = [], switched = [];
    readonly Dictionary<string, double> usualKilowatts = [], sensorRelative = [];
    readonly Dictionary<string, ChannelPlan> sensors = [];

    /// <summary>As the month began; null for electricity.</summary>
    readonly StudioGas? gas;
    readonly Dictionary<string, Instant> sensedSince = [];
    readonly Spread? spread;
    readonly IReadOnlyList<string> spreadOver;
    readonly IReadOnlyList<TypedStretch> broken;

    /// <param name="steps">Edges of the steps, in one calendar month.</param>
    public KindMonth(EnergyKind kind, StudioPlan plan, MeterTree tree, FuelBook fuel, SpreadSource source, IReadOnlyList<Instant> steps, Instant now)
    {
        (this.kind, this.fuel) = (kind, fuel);
        gas = kind == EnergyKind.Gas ? fuel.GasAt(steps[0]) : null;
        main = tree.Main(kind);
        pieces = [.. Calendar.Edges(steps[0], steps[^1], FuelStep.Day, plan.Zone).Concat(steps).Concat(fuel.Changes(steps[0], steps[^1])).Distinct().Order()];
        if (main is { Channel.IsTyped: false }) mainUses = Along(main, now);
        foreach (var appliance in plan.Appliances)
        {
            if (tree.Own(kind, appliance.Id) is { Channel.IsTyped: false } own) Sense(appliance.Id, own.Channel, Along(own, now));
            else if (FuelSource.Of(appliance).Any(s => s.Kind == kind && !s.IsMeasured)) switched[appliance.Id] = fuel.Along(appliance, pieces, now, kind);
        }
        (spread, broken) = source.Of(kind, steps[0], steps[^1], now);
        spreadOver = spread is null ? [] : source.Over;

        IReadOnlyList<FuelUse> Along(MeterNode node, Instant until) =>
            plan.Appliance(node.Channel.Appliance) is { } at && FuelSource.Of(at).Any(s => s.Channel.Id == node.Channel.Id)
                ? fuel.Along(at, pieces, until, kind) : fuel.Along(node.Channel, pieces, until);
    }

    /// <summary>Time without readings is thought to have gone on as usual, from the first reading on.</summary>
    void Sense(string appliance, ChannelPlan sensor, IReadOnlyList<FuelUse> uses)
    {
        sensed[appliance] = uses;
        (sensors[appliance], sensorRelative[appliance]) = (sensor, FuelDoubt.Of(sensor));
        var hours = uses.Sum(u => u.MeasuredShare * (u.To - u.From).TotalHours);
        usualKilowatts[appliance] = hours > 0 ? uses.Sum(u => u.EnergyKilowattHours) / hours : 0;
        sensedSince[appliance] = uses.FirstOrDefault(u => u.MeasuredShare > 0)?.From ?? Instant.MaxValue;
    }

    double Missing(string appliance, FuelUse use) =>
        use.From < sensedSince[appliance] ? 0 : usualKilowatts[appliance] * (1 - use.MeasuredShare) * (use.To - use.From).TotalHours;

    public KindUse Step(Instant from, Instant to)
    {
        var step = new StepSum();
        var (first, end) = PiecesOf(from, to);
        for (var i = first; i < end; i++) Add(step, i);
        return Finish(step, from, to);
    }

    /// <summary>Places of the pieces that lie in a step, the end not included. Found by halving: a month asked by the hour must not look at every hour for each.</summary>
    (int First, int End) PiecesOf(Instant from, Instant to)
    {
        int first = pieces.BinarySearch(from), end = pieces.BinarySearch(to);
        first = first < 0 ? ~first : first;
        return (first, Math.Max(first, end < 0 ? ~end - 1 : end));
    }

    /// <summary>Energies of one step while they are added up, kWh.</summary>
    sealed class StepSum
    {
        public Dictionary<string, double> Energy { get; } = [];
        public Dictionary<string, double> BaseCubicMetres { get; } = [];
        public Dictionary<string, double> LineCubicMetres { get; } = [];
        public Dictionary<string, double> Missing { get; } = [];
        public double Main { get; set; }
        public int Resets { get; set; }

        public static void Add(Dictionary<string, double> to, string appliance, double amount) => to[appliance] = to.GetValueOrDefault(appliance) + amount;
    }

    void Add(StepSum step, int i)
    {
        var (start, end) = (pieces[i], pieces[i + 1]);
        var energy = new Dictionary<string, double>();
        foreach (var (appliance, uses) in sensed)
        {
            var missing = Missing(appliance, uses[i]);
            StepSum.Add(step.Missing, appliance, missing);
            energy[appliance] = uses[i].EnergyKilowattHours + uses[i].EstimatedKilowattHours + missing;
            step.Resets += uses[i].Resets;
        }
        foreach (var appliance in spreadOver) energy[appliance] = spread!.Mean(appliance, start, end);
        foreach (var (appliance, uses) in switched.Where(s => !spreadOver.Contains(s.Key))) energy[appliance] = uses[i].EstimatedKilowattHours;
        var counted = Counted(i);
        if (counted is { } sum) AddUpToMain(energy, sum);
        else if (spread is not null) KeepAboveNothing(energy);
        step.Main += counted ?? 0;
        step.Resets += mainUses?[i].Resets ?? 0;

        var gasThen = kind == EnergyKind.Gas ? fuel.GasAt(start) : null;
        foreach (var (appliance, amount) in energy)
        {
            StepSum.Add(step.Energy, appliance, amount);
            if (gasThen is null) continue;
            var baseCubicMetres = amount / gasThen.Fuel.GrossKilowattHoursPerCubicMetre;
            StepSum.Add(step.BaseCubicMetres, appliance, baseCubicMetres);
            StepSum.Add(step.LineCubicMetres, appliance, baseCubicMetres / gasThen.BaseFactor);
        }
    }

    /// <summary>What the main meter counted in a piece; null where it said nothing of most of it, and its sensors alone speak.</summary>
    double? Counted(int i) => mainUses?[i] is { MeasuredShare: > 0.5 } use ? use.EnergyKilowattHours / use.MeasuredShare : null;

    /// <summary>The main meter's count is the sum: what sensors leave of it is the fires', what these leave is the shop's.</summary>
    void AddUpToMain(Dictionary<string, double> energy, double counted)
    {
        var shop = main!.Channel.Appliance;
        if (!spreadOver.Contains(shop)) energy[shop] = spreadOver.Count == 0 ? counted - energy.Where(e => e.Key != shop).Sum(e => e.Value) : 0;
        if (spreadOver.Count > 0)
        {
            var left = counted - energy.Where(e => !spreadOver.Contains(e.Key)).Sum(e => e.Value);
            var spreadSum = spreadOver.Sum(a => Math.Max(0, energy[a]));
            foreach (var appliance in spreadOver) energy[appliance] = spreadSum > 0 ? Math.Max(0, energy[appliance]) * left / spreadSum : 0;
            if (spreadSum <= 0) energy[shop] = energy.GetValueOrDefault(shop) + left;
        }
        KeepAboveNothing(energy);
    }

    /// <summary>Nothing burns less than nothing: where sensors count a little more than the meter before them, what they counted is scaled to it.</summary>
    static void KeepAboveNothing(Dictionary<string, double> energy)
    {
        var below = energy.Where(e => e.Value < 0).ToList();
        if (below.Count == 0) return;
        var sum = energy.Sum(e => e.Value);
        foreach (var (appliance, _) in below) energy[appliance] = 0;
        var above = energy.Sum(e => e.Value);
        var scale = above > 0 ? Math.Max(0, sum) / above : 0;
        foreach (var appliance in energy.Keys.ToList()) energy[appliance] *= scale;
    }

    KindUse Finish(StepSum step, Instant from, Instant to)
    {
        var coverage = Coverage(from, to);
        var isMainTyped = main is { Channel.IsTyped: true };
        var shares = step.Energy.Select(e => new FuelShare(e.Key, kind, OriginOf(e.Key, from, to), With(e.Key, e.Value, step, from, to),
            step.BaseCubicMetres.GetValueOrDefault(e.Key), step.LineCubicMetres.GetValueOrDefault(e.Key))
            { GasRelative = gas?.EnergyRelative ?? 0, ConditionsRelative = gas?.VolumeRelative ?? 0 }).Where(s => s.KilowattHours != Estimate.Exact(0) || sensed.ContainsKey(s.Appliance)).ToList();
        var total = step.Energy.Sum(e => e.Value);
        var budget = BudgetOf(total, step, from, to, isMainTyped);
        var estimate = new Estimate(budget.Value, budget.StandardUncertainty);
        var metered = mainUses is not null ? estimate : isMainTyped ? estimate * Estimate.Exact(coverage ?? 0) : MeteredBySensors(step, from, to);
        return new KindUse(shares, budget, metered, coverage, step.Resets + broken.Count(b => b.To > from && b.To <= to));
    }

    /// <summary>Why the sum may be off: what all gas meters share, the meters that counted it, and what no meter counted.</summary>
    Budget BudgetOf(double total, StepSum step, Instant from, Instant to, bool isMainTyped)
    {
        var shared = kind == EnergyKind.Gas ? gas!.BudgetOf(total).Contributions : [];
        if (mainUses is not null) return new Budget(total, [.. shared, FuelDoubt.ClassOf(main!.Channel, total)]);
        if (spread is null || !(isMainTyped || spreadOver.Count > 0))
            return new Budget(total, [.. shared, .. sensed.Keys.Select(a => FuelDoubt.ClassOf(sensors[a], step.Energy[a])), .. Rest(step)]);
        // The meters' classes are in it: readings between them bind them together.
        var counted = spread.Of(spreadOver, from, to, sensed.Keys.Select(a => new MeteredPart(a, step.Energy[a], sensorRelative[a])));
        return new Budget(total, [.. shared, new Contribution("meters, and what lies between their readings", counted.StandardUncertainty), .. Rest(step)]);
    }

    /// <summary>Doubts that are in no meter's row: time without readings, nameplates.</summary>
    IEnumerable<Contribution> Rest(StepSum step) => step.Missing.Where(m => m.Value > 0).Select(m => Contribution.Rectangular("time without readings", m.Value))
        .Concat(switched.Keys.Where(a => !spreadOver.Contains(a)).SelectMany(a => EnergyBudgets.Nameplate(step.Energy.GetValueOrDefault(a), a).Contributions));

    /// <summary>Without a main meter: what sensors counted, and what typed meters of single appliances did.</summary>
    Estimate MeteredBySensors(StepSum step, Instant from, Instant to)
    {
        var counted = sensed.Keys.Select(a => Estimate.Relative(step.Energy[a] - step.Missing[a], sensorRelative[a]))
            .Concat(spreadOver.Where(a => OriginOf(a, from, to) == Origin.Derived).Select(a => new Estimate(step.Energy[a], spread!.Of([a], from, to, []).StandardUncertainty))).ToList();
        return Shared(counted.Sum(c => c.Value), counted.Select(c => c.StandardUncertainty).Aggregate(0.0, double.Hypot));
    }

    /// <summary>With what all gas meters share: it adds to every part alike, so that it adds up along with the parts (GUM, JCGM 100:2008, 5.2.2).</summary>
    Estimate Shared(double kilowattHours, params ReadOnlySpan<double> own)
    {
        var doubt = kilowattHours * (gas?.EnergyRelative ?? 0);
        foreach (var one in own) doubt = double.Hypot(doubt, one);
        return new Estimate(kilowattHours, doubt);
    }

    Estimate With(string appliance, double energy, StepSum step, Instant from, Instant to)
    {
        if (sensed.ContainsKey(appliance)) return Shared(energy, energy * sensorRelative[appliance], FuelUse.MissingOf(step.Missing[appliance]).StandardUncertainty);
        if (spreadOver.Contains(appliance)) return Shared(energy, spread!.Of([appliance], from, to, []).StandardUncertainty);
        if (switched.ContainsKey(appliance)) return FuelDoubt.Nameplate.Times(energy).Estimate;
        var counted = main is null ? 0 : step.Main * FuelDoubt.Of(main.Channel);
        var meters = sensed.Keys.Aggregate(counted, (sum, a) => double.Hypot(sum, step.Energy[a] * sensorRelative[a]));
        return Shared(energy, Rest(step).Select(c => c.Effect).Aggregate(meters, double.Hypot));
    }

    Origin OriginOf(string appliance, Instant from, Instant to)
    {
        if (sensed.ContainsKey(appliance)) return Origin.Measured;
        if (!spreadOver.Contains(appliance)) return switched.ContainsKey(appliance) ? Origin.Estimated : sensed.Count + switched.Count == 0 && mainUses is not null ? Origin.Measured : Origin.Derived;
        var isAlone = spread!.IsAlone(appliance);
        return isAlone && spread.CoveredSeconds(appliance, from, to) >= 0.5 * (to - from).TotalSeconds ? Origin.Derived : Origin.Estimated;
    }

    double? Coverage(Instant from, Instant to)
    {
        if (main is { Channel.IsTyped: true }) return spread is null ? 0 : Math.Min(1, spread.CoveredSeconds(main.Channel.Appliance, from, to) / (to - from).TotalSeconds);
        if (mainUses is not null) return Share(mainUses);
        var own = sensed.Values.Select(Share).Concat(spreadOver.Where(a => spread!.IsAlone(a)).Select(a => spread!.CoveredSeconds(a, from, to) / (to - from).TotalSeconds)).ToList();
        return own.Count == 0 ? null : own.Average();

        double Share(IReadOnlyList<FuelUse> uses)
        {
            double measured = 0, asked = 0;
            var (first, end) = PiecesOf(from, to);
            for (var i = first; i < Math.Min(end, uses.Count); i++)
            {
                var seconds = (uses[i].To - uses[i].From).TotalSeconds;
                (measured, asked) = (measured + uses[i].MeasuredShare * seconds, asked + seconds);
            }
            return measured / Math.Max(1, asked);
        }
    }
}
