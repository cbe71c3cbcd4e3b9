using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>
/// Spreads what meters counted over the appliances behind them and over the time between two readings. Each fire is believed to burn so many kilowatts in
/// each of its modes, widely; every row of a meter narrows that, as weeks with many working hours differ from weeks with few. What a row counted is kept
/// to the last kilowatt-hour. Pure.
/// </summary>
sealed class Spread
{
    readonly IReadOnlyList<Fire> fires;
    readonly IReadOnlyList<MeterRow> rows;
    readonly List<string> appliances, meters, sensors;
    readonly Dictionary<string, double> meterRelative, sensorRelative;
    readonly Instant[] edges;
    readonly double[][] hours;
    readonly ObservedSums sums, kept;
    readonly double[] kilowatts;

    public Spread(IReadOnlyList<Fire> fires, IReadOnlyList<MeterRow> rows)
    {
        (this.fires, this.rows) = (fires, rows);
        appliances = [.. fires.Select(f => f.Appliance).Distinct()];
        meters = [.. rows.Select(r => r.Meter).Distinct()];
        sensors = [.. rows.SelectMany(r => r.Measured).Select(m => m.Appliance).Distinct()];
        meterRelative = rows.GroupBy(r => r.Meter).ToDictionary(g => g.Key, g => g.Max(r => r.MeterRelative));
        sensorRelative = rows.SelectMany(r => r.Measured).GroupBy(m => m.Appliance).ToDictionary(g => g.Key, g => g.Max(m => m.SensorRelative));
        edges = [.. rows.SelectMany(r => new[] { r.From, r.To }).Distinct().Order()];
        hours = [.. edges.Zip(edges.Skip(1), (from, to) => fires.Select(f => f.Hours(from, to)).ToArray())];
        // Twice: how far a stretch may lie off its mean depends on the mean, which the first pass finds.
        var first = Solve(FirstGuess(), keepsRegisters: true);
        // The best values keep to the registers, as the bill does, however odd a week was; how far they may be wrong, the meters' own error included, is
        // a question of its own.
        kept = Solve(Powers(first), keepsRegisters: true);
        sums = Solve(Powers(first), keepsRegisters: false);
        kilowatts = Powers(kept);
    }

    int MeterAt(string meter) => fires.Count + meters.IndexOf(meter);

    int SensorAt(string appliance) => fires.Count + meters.Count + sensors.IndexOf(appliance);

    int DeviationAt(int segment, int appliance) => fires.Count + meters.Count + sensors.Count + segment * appliances.Count + appliance;

    /// <summary>Of a fire nothing is believed of, what the others leave.</summary>
    double[] FirstGuess()
    {
        var guess = fires.Select(f => f.Kilowatts.Value).ToArray();
        var counted = rows.Sum(r => r.KilowattHours - r.Measured.Sum(m => m.KilowattHours));
        var believed = fires.Select((f, i) => guess[i] * rows.Sum(r => r.Serves.Contains(f.Appliance) ? f.Hours(r.From, r.To) : 0)).Sum();
        for (var i = 0; i < guess.Length; i++)
            if (guess[i] == 0 && rows.Sum(r => fires[i].Hours(r.From, r.To)) is var blank and > 0) guess[i] = Math.Max(0, counted - believed) / blank;
        return guess;
    }

    double[] Powers(ObservedSums from) => [.. fires.Select((_, i) => Math.Max(0, from.Mean(i)))];

    /// <param name="keepsRegisters">What outermost meters counted is taken as it stands; sensors behind them too, where they do not count more than it.</param>
    ObservedSums Solve(double[] powers, bool keepsRegisters)
    {
        var beliefs = new Estimate[fires.Count + meters.Count + sensors.Count + hours.Length * appliances.Count];
        for (var i = 0; i < fires.Count; i++) beliefs[i] = fires[i].Kilowatts;
        var (registers, isSensed) = keepsRegisters ? Registers() : ([], false);
        foreach (var meter in meters) beliefs[MeterAt(meter)] = registers.Contains(meter) ? Estimate.Exact(0) : new Estimate(0, meterRelative[meter]);
        foreach (var sensor in sensors) beliefs[SensorAt(sensor)] = isSensed ? Estimate.Exact(0) : new Estimate(0, sensorRelative[sensor]);
        for (var segment = 0; segment < hours.Length; segment++)
            for (var a = 0; a < appliances.Count; a++)
                beliefs[DeviationAt(segment, a)] = new Estimate(0, Deviation(appliances[a], hours[segment], powers, (edges[segment + 1] - edges[segment]).TotalHours));
        return new ObservedSums(beliefs, [.. rows.Select(r => Observed(r, registers.Contains(r.Meter)))]);
    }

    (HashSet<string> Meters, bool AreSensorsKept) Registers()
    {
        var outermost = rows.Where(r => r.IsOutermost).ToList();
        return ([.. outermost.Select(r => r.Meter)], outermost.All(r => r.Measured.Sum(m => m.KilowattHours) <= r.KilowattHours));
    }

    double Deviation(string appliance, double[] fireHours, double[] powers, double span)
    {
        double energy = 0, variance = 0;
        for (var i = 0; i < fires.Count; i++)
        {
            if (fires[i].Appliance != appliance) continue;
            energy += fireHours[i] * powers[i];
            variance = Math.Max(variance, fires[i].Wander.VarianceOver(span));
        }
        return energy * Math.Sqrt(variance);
    }

    ObservedSum Observed(MeterRow row, bool isKept)
    {
        var weights = new List<(int, double)> { (MeterAt(row.Meter), -row.KilowattHours) };
        foreach (var part in row.Measured) weights.Add((SensorAt(part.Appliance), part.KilowattHours));
        for (var segment = Array.BinarySearch(edges, row.From); segment < hours.Length && edges[segment] < row.To; segment++)
        {
            for (var i = 0; i < fires.Count; i++)
                if (row.Serves.Contains(fires[i].Appliance) && hours[segment][i] > 0) weights.Add((i, hours[segment][i]));
            for (var a = 0; a < appliances.Count; a++)
                if (row.Serves.Contains(appliances[a])) weights.Add((DeviationAt(segment, a), 1));
        }
        // A hundredth of a kilowatt-hour keeps two readings of the same minute from contradicting each other exactly.
        return new ObservedSum(weights, new Estimate(row.KilowattHours - row.Measured.Sum(m => m.KilowattHours), isKept ? 0.01 : Math.Max(0.01, row.Uncertainty)));
    }

    /// <summary>Time of [from, to) in which some meter with an appliance behind it was read before and after, in s.</summary>
    public double CoveredSeconds(string appliance, Instant from, Instant to)
    {
        var covered = Duration.Zero;
        for (var segment = 0; segment + 1 < edges.Length; segment++)
        {
            var (start, end) = (Instant.Max(from, edges[segment]), Instant.Min(to, edges[segment + 1]));
            if (start < end && rows.Any(r => r.From <= start && r.To >= end && r.Serves.Contains(appliance))) covered += end - start;
        }
        return covered.TotalSeconds;
    }

    /// <summary>Whether some meter has this appliance as the only one behind it that is not measured otherwise: what it counts is known to be its.</summary>
    public bool IsAlone(string appliance) => rows.Any(r => r.Serves.Contains(appliance) && appliances.Count(r.Serves.Contains) == 1);

    /// <summary>Best value of an appliance's use in a stretch of time, kWh; may be a little below 0 where meters contradict each other.</summary>
    public double Mean(string appliance, Instant from, Instant to)
    {
        var (weights, _) = Weights(appliance, from, to);
        return weights.Sum(w => w.Weight * kept.Mean(w.Index));
    }

    /// <summary>What several appliances used together in a stretch of time, kWh, without what all gas meters share.</summary>
    /// <param name="measured">Appliances with sensors that are added to them: their meters' errors count, not their values.</param>
    public Estimate Of(IEnumerable<string> several, Instant from, Instant to, IEnumerable<MeteredPart> measured)
    {
        var (all, between) = (new List<(int, double)>(), 0.0);
        foreach (var appliance in several)
        {
            var (weights, variance) = Weights(appliance, from, to);
            all.AddRange(weights);
            between += variance;
        }
        foreach (var part in measured)
            if (sensors.Contains(part.Appliance)) all.Add((SensorAt(part.Appliance), part.KilowattHours));
            else between += Math.Pow(part.KilowattHours * part.SensorRelative, 2);
        var sum = sums.Of(all);
        return sum with { Value = all.Sum(w => w.Item2 * kept.Mean(w.Item1)), StandardUncertainty = Math.Sqrt(sum.StandardUncertainty * sum.StandardUncertainty + between) };
    }

    (List<(int Index, double Weight)> Weights, double Variance) Weights(string appliance, Instant from, Instant to)
    {
        var (weights, variance, a) = (new List<(int, double)>(), 0.0, appliances.IndexOf(appliance));
        foreach (var (start, end, segment) in Cut(from, to))
        {
            double part = 0, whole = 0, wander = 0, wanderWhole = 0;
            var (span, spanWhole) = ((end - start).TotalHours, segment < 0 ? 0 : (edges[segment + 1] - edges[segment]).TotalHours);
            for (var i = 0; i < fires.Count; i++)
            {
                if (fires[i].Appliance != appliance) continue;
                var inPart = fires[i].Hours(start, end);
                weights.Add((i, inPart));
                part += inPart * kilowatts[i];
                wander = Math.Max(wander, fires[i].Wander.VarianceOver(span));
                if (segment < 0) continue;
                whole += hours[segment][i] * kilowatts[i];
                wanderWhole = Math.Max(wanderWhole, fires[i].Wander.VarianceOver(spanWhole));
            }
            if (segment < 0)
            {
                variance += part * part * wander;
                continue;
            }
            var share = whole > 0 ? part / whole : span / spanWhole;
            weights.Add((DeviationAt(segment, a), share));
            // What a part lies off beside its share of the whole stretch's deviation: nothing for the whole stretch.
            variance += Math.Max(0, part * part * wander - share * share * whole * whole * wanderWhole);
        }
        return (weights, variance);
    }

    /// <summary>A stretch of time cut at the rows' ends; -1 for what lies before the first and after the last.</summary>
    IEnumerable<(Instant From, Instant To, int Segment)> Cut(Instant from, Instant to)
    {
        if (edges.Length == 0)
        {
            yield return (from, to, -1);
            yield break;
        }
        if (from < edges[0]) yield return (from, Instant.Min(to, edges[0]), -1);
        for (var segment = 0; segment + 1 < edges.Length; segment++)
            if (edges[segment] < to && edges[segment + 1] > from) yield return (Instant.Max(from, edges[segment]), Instant.Min(to, edges[segment + 1]), segment);
        if (to > edges[^1]) yield return (Instant.Max(from, edges[^1]), to, -1);
    }
}
