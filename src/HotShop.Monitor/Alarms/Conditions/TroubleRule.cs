namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>A part of the service reports trouble.</summary>
internal sealed class TroubleRule(AlarmDefinition definition) : Rule(definition)
{
    public override IReadOnlyList<Input> Inputs { get; } = [];
    public override bool WatchesClock => true;
    public override int SamplesWanted => 1;

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule) => now.Part(Definition.Channel!) switch
    {
        null => Finding.Unknown,
        { IsWorking: true } => new Finding(Verdict.Fine),
        var part => new Finding(Verdict.Wrong, Start: part.Since, Detail: part.Detail),
    };
}
