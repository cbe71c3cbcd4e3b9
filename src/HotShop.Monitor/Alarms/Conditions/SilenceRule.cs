using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>
/// No usable live reading for too long, by the clock of arrivals. What the service could not hear while it was down, or stood still, is no silence:
/// from then on a channel has one interval and a minute of grace.
/// </summary>
internal sealed class SilenceRule(AlarmDefinition definition, Input channel, bool rests, Duration startGrace) : Rule(definition)
{
    readonly Duration limit = Duration.FromSeconds(definition.Limit!.Value), grace = channel.Plan.Interval + startGrace;

    /// <summary>None: a sample has the device's time, silence runs on the clock of arrivals.</summary>
    public override IReadOnlyList<Input> Inputs { get; } = [];

    public override bool WatchesClock => true;

    /// <summary>It counts deadlines, not samples.</summary>
    public override int SamplesWanted => 1;

    public override Finding Judge(in Situation now, AlarmMemory memory, ref RuleMemory rule)
    {
        if (rests && now.ModeOf(Definition.Appliance) is Mode.Off or Mode.OutOfService) return Finding.NotWanted;
        var heard = now.Channel(channel);
        var (since, deadline) = Deadline(now, heard, memory.NotBefore);
        if (now.At < deadline) return new Finding(Verdict.Fine, (now.At - since).TotalSeconds);
        var detail = heard.Unusable is { } value && heard.HeardArrival > since ? Say.Unusable(value, channel.Plan.Quantity)
            : heard.GoodArrival is null || heard.GoodArrival < now.StartedAt ? Say.SinceStart + Say.Seconds(grace.TotalSeconds)
            : null;
        return new Finding(Verdict.Wrong, (now.At - since).TotalSeconds, Start: since, OnDelay: Duration.Zero, Detail: detail);
    }

    (Instant Since, Instant Deadline) Deadline(in Situation now, ChannelMemory heard, Instant? notBefore)
    {
        var since = heard.GoodArrival ?? now.StartedAt;
        var deadline = since + limit;
        if (since <= now.StartedAt && heard.GoodArrival is not null || !channel.Plan.OnChangeOnly)
            deadline = Instant.Max(deadline, now.StartedAt + grace);
        if (notBefore is { } released && released > since) (since, deadline) = (released, Instant.Max(deadline, released + grace));
        return (since, deadline);
    }
}
