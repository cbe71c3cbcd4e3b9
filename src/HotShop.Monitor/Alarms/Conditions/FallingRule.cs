using System.Collections.Immutable;
using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>
/// Fire inferred to be lost, where no flame sensor tells: the temperature falls although the gas flows as usual.
/// A plain deviation: the slope over half an hour, and over its last ten minutes, against the limit.
/// </summary>
/// <remarks>
/// A burner turned down takes less gas than usual and so is no failure; nor, alas, is one that goes out while it is turned down.
/// A cold charge falls as well but is on its way up again within the on-delay, thrice as long while charging.
/// </remarks>
internal sealed class FallingRule(AlarmDefinition definition, Input temperature, Input gasFlow) : Rule(definition)
{
    static readonly Duration Step = Duration.FromMinutes(1), Window = Duration.FromMinutes(30), Shortest = Duration.FromMinutes(20), Recent = Duration.FromMinutes(10);

    /// <summary>Gas counts as flowing as usual at this share of it. Usual is a mean over about half a day.</summary>
    const double AsUsual = 0.8, UsualHours = 12;

    /// <summary>More than a pilot flame takes, m³/h. Common practice.</summary>
    const double AbovePilot = 0.3;

    public override IReadOnlyList<Input> Inputs { get; } = [temperature];
    public override bool WatchesClock => false;
    public override int SamplesWanted => Timing.SamplesWanted;

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule)
    {
        if (now.Fresh(temperature) is not { } celsius) return Finding.Unknown;
        var trend = rule.Trend ?? [];
        if (trend.Count > 0 && now.At < trend[^1].At + Step) return Finding.Unknown;   // one look a minute
        trend = Add(trend, new TrendPoint(now.At, celsius, now.Fresh(gasFlow)));
        rule = rule with { Trend = trend, UsualCubicMetresPerHour = Usual(rule.UsualCubicMetresPerHour, trend) };

        var mode = now.ModeOf(Definition.Appliance);
        if (!mode.WantsFire()) return Finding.NotWanted;
        if (trend[^1].At - trend[0].At < Shortest) return Finding.Unknown;
        var cut = now.At - Recent;
        var recent = trend.Where(p => p.At > cut).ToList();
        var flows = recent.Where(p => p.CubicMetresPerHour is not null).Select(p => p.CubicMetresPerHour!.Value).ToList();
        if (flows.Count < 3) return Finding.Unknown;

        var (fall, flow) = (-KelvinPerHour(trend), flows.Average());
        var isFiring = flow >= AbovePilot && flow >= AsUsual * rule.UsualCubicMetresPerHour && -KelvinPerHour(recent) > Definition.Limit / 2;
        // Once it has rung, only a temperature that no longer falls makes it good: gas that is shut off since does not.
        var finding = isFiring || memory.State.IsActive() ? Finding.Above(fall, Definition.Limit!.Value, Definition.Deadband) : new Finding(Verdict.Fine, fall);
        return finding with { OnDelay = mode == Mode.Charging ? Definition.OnDelay * 3 : null, Detail = Say.Flow(flow) };
    }

    static double? Usual(double? before, ImmutableList<TrendPoint> trend)
    {
        if (trend[^1].CubicMetresPerHour is not { } flow) return before;
        if (before is not { } usual || trend.Count < 2) return before ?? flow;
        var share = (trend[^1].At - trend[^2].At).TotalHours / UsualHours;
        return usual + (flow - usual) * share;
    }

    static ImmutableList<TrendPoint> Add(ImmutableList<TrendPoint> trend, TrendPoint point)
    {
        // Across a gap nothing is known of the fall: begin again.
        if (trend.Count > 0 && point.At - trend[^1].At > Step * 5) trend = [];
        trend = trend.Add(point);
        while (trend[0].At < point.At - Window) trend = trend.RemoveAt(0);
        return trend;
    }

    /// <summary>Slope of the straight line through the points by least squares, K/h.</summary>
    static double KelvinPerHour(IReadOnlyList<TrendPoint> trend)
    {
        var origin = trend[0].At;
        var hours = trend.Average(p => (p.At - origin).TotalHours);
        var celsius = trend.Average(p => p.Celsius);
        var (over, under) = (0.0, 0.0);
        foreach (var point in trend)
        {
            var x = (point.At - origin).TotalHours - hours;
            (over, under) = (over + x * (point.Celsius - celsius), under + x * x);
        }
        return over / under;
    }
}
