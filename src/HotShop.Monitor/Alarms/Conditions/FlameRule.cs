using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Modes;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>
/// Fire asked for and none seen. Where a call for heat is known it alone asks: a cycling burner rests without it.
/// Where none is known the mode asks, and the on-delay is long enough for a burner that cycles.
/// </summary>
internal sealed class FlameRule(AlarmDefinition definition, Input flame, Input? callForHeat, Input? gasFlow) : Rule(definition)
{
    public override IReadOnlyList<Input> Inputs { get; } = callForHeat is null ? [flame] : [flame, callForHeat];

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule)
    {
        var mode = now.ModeOf(Definition.Appliance);
        if (mode is Mode.Off or Mode.OutOfService) return Finding.NotWanted;
        // On the way down a burner may rest for hours; only a call for heat says that it should not.
        if (callForHeat is null && !mode.WantsFire()) return Finding.NotWanted;
        if (now.IsOn(flame) is not { } burns) return Finding.Unknown;
        if (burns) return new Finding(Verdict.Fine, 1);
        if (callForHeat is not null)
        {
            if (now.IsOn(callForHeat) is not { } called) return Finding.Unknown;
            // No call, no fire: that ends a wait for ignition, but it does not show that the burner can burn.
            if (!called) return memory.State.IsActive() ? new Finding(Verdict.Between, 0) : Finding.NotWanted;
        }
        var flow = now.Fresh(gasFlow);
        return new Finding(Verdict.Wrong, 0, Detail: flow is > 0.05 ? Say.Flow(flow.Value) : null);
    }
}
