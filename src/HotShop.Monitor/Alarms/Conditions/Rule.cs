namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>Decides whether a condition holds. No clock, no I/O: everything is in the situation.</summary>
internal abstract class Rule(AlarmDefinition definition)
{
    public AlarmDefinition Definition { get; } = definition;

    /// <summary>Channels whose samples make it look again.</summary>
    public abstract IReadOnlyList<Input> Inputs { get; }

    /// <summary>Looks again at each tick: what it watches is silence, or a value that holds until it changes.</summary>
    public virtual bool WatchesClock => Inputs.Any(i => i.Plan.OnChangeOnly);

    public virtual int SamplesWanted => Inputs.Any(i => i.Plan.OnChangeOnly) ? 1 : Timing.SamplesWanted;

    public abstract Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule);
}
