namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>A value above its limit: heat, carbon monoxide, combustible gas. No mode silences it.</summary>
internal sealed class LimitRule(AlarmDefinition definition, Input channel) : Rule(definition)
{
    public override IReadOnlyList<Input> Inputs { get; } = [channel];

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule) =>
        now.Fresh(channel) is { } value ? Finding.Above(value, Definition.Limit!.Value, Definition.Deadband) : Finding.Unknown;
}
