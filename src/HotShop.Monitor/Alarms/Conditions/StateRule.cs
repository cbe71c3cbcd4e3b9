using HotShop.Monitor.Modes;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>A contact that should not be so: mains gone, burner locked out.</summary>
internal sealed class StateRule(AlarmDefinition definition, Input channel, bool wrongWhen, bool rests) : Rule(definition)
{
    public override IReadOnlyList<Input> Inputs { get; } = [channel];

    /// <remarks>A locked-out burner of an appliance that is off, or being mended, calls nobody.</remarks>
    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule)
    {
        if (rests && now.ModeOf(Definition.Appliance) is Mode.Off or Mode.OutOfService) return Finding.NotWanted;
        return now.IsOn(channel) is { } isOn ? new Finding(isOn == wrongWhen ? Verdict.Wrong : Verdict.Fine, isOn ? 1 : 0) : Finding.Unknown;
    }
}
