using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>
/// An annealer away from its curve, above or below, while that can still leave stress. A typed curve goes before the controller's setpoint.
/// Not wrong: a setpoint that stops when its programme ends, an oven that cools by itself more slowly than a setpoint far below,
/// a door opened for loading (the on-delay), and the way up to a new setpoint (a longer one).
/// </summary>
internal sealed class DriftRule(AlarmDefinition definition, Input temperature, Input? setpoint) : Rule(definition)
{
    static readonly Duration HeatUp = Duration.FromSeconds(AlarmDefaults.DriftHeatUpSeconds);

    /// <summary>A setpoint that moved this far has moved; so a slow ramp is remembered in few steps.</summary>
    const double MarkKelvin = 5;

    public override IReadOnlyList<Input> Inputs { get; } = [temperature];
    public override bool WatchesClock => false;
    public override int SamplesWanted => Timing.SamplesWanted;

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule)
    {
        if (now.ModeOf(Definition.Appliance) is Mode.Off or Mode.OutOfService) return Finding.NotWanted;
        if (now.Fresh(temperature) is not { } measured) return Finding.Unknown;
        if ((now.CurveCelsius(Definition.Appliance) ?? now.Fresh(setpoint)) is not { } intended)
        {
            if (measured >= AlarmDefaults.DriftFloorCelsius) return Finding.Unknown;
            if (rule != RuleMemory.Nothing) rule = RuleMemory.Nothing;   // cold and without a programme: the next one starts from the bottom
            return Finding.NotWanted;
        }
        rule = Remember(rule, intended, measured);
        if (intended < AlarmDefaults.DriftFloorCelsius) return Finding.NotWanted;

        var deviation = measured - intended;
        var finding = Finding.Above(Math.Abs(deviation), Definition.Limit!.Value, Definition.Deadband);
        return finding with
        {
            Value = deviation,
            OnDelay = rule.HasReached || deviation > 0 ? null : HeatUp,
            Detail = Say.Temperature(intended),
        };
    }

    RuleMemory Remember(RuleMemory rule, double intended, double measured)
    {
        var isNear = Math.Abs(measured - intended) <= Definition.Limit;
        if (rule.SetpointMark is not { } mark || intended - mark > MarkKelvin) return rule with { HasReached = isNear, SetpointMark = intended };
        if (mark - intended > MarkKelvin) rule = rule with { SetpointMark = intended };
        return isNear && !rule.HasReached ? rule with { HasReached = true } : rule;
    }
}
