using System.Collections.Immutable;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>What a step leads to.</summary>
internal readonly record struct Stepped(StudioMemory Memory, IReadOnlyList<AlarmTransition> Transitions);

/// <summary>All alarms of a studio as one function: (memory, event) to (memory, transitions). Live, in a replay and in a test the same.</summary>
internal sealed class AlarmEngine
{
    readonly AlarmPace pace;
    readonly Watch[] watches;
    readonly Dictionary<string, int> channels;
    readonly int[][] byChannel;
    readonly int[] byClock;
    readonly ILookup<string, int> byAppliance;

    public AlarmEngine(StudioPlan plan, AlarmPace? pace = null)
    {
        this.pace = pace ?? AlarmPace.Real;
        Channels = [.. plan.Appliances.SelectMany(a => a.Channels)];
        channels = Channels.Select((c, i) => (c.Id, i)).ToDictionary(c => c.Id, c => c.i);
        var rules = new Rules(plan, Channels, this.pace);
        Definitions = AlarmDefinitions.Of(plan, this.pace);
        var index = Definitions.Select((d, i) => (d.Id, i)).ToDictionary(d => d.Id, d => d.i);
        watches = [.. Definitions.Select(d => new Watch(rules.Of(d), [.. d.Causes.Where(index.ContainsKey).Select(c => index[c])], plan.Zone))];
        byChannel = [.. Channels.Select((_, c) => Where(w => w.Rule.Inputs.Any(i => i.Index == c)))];
        byClock = Where(w => w.Rule.WatchesClock);
        byAppliance = Enumerable.Range(0, watches.Length).ToLookup(w => Definitions[w].Appliance);
    }

    public IReadOnlyList<AlarmDefinition> Definitions { get; }
    public IReadOnlyList<ChannelPlan> Channels { get; }

    public int? IndexOfChannel(string id) => channels.TryGetValue(id, out var index) ? index : null;

    /// <summary>The memory of a service that has never run.</summary>
    public StudioMemory Begin(Instant now) => new(now,
        [.. Channels.Select(_ => ChannelMemory.Nothing)], [.. watches.Select(_ => AlarmMemory.Quiet)],
        ImmutableDictionary<string, ModeInForce>.Empty, ImmutableDictionary<string, PartHealth>.Empty, ImmutableDictionary<string, AnnealingCurve>.Empty);

    public Stepped Step(StudioMemory memory, AlarmEvent happened)
    {
        List<AlarmTransition>? transitions = null;
        memory = happened switch
        {
            AlarmEvent.Sample sample => Hear(memory, sample, ref transitions),
            AlarmEvent.Tick tick => Look(Awake(memory, tick.Now), byClock, tick.Now, isEvidence: true, ref transitions),
            AlarmEvent.ModeSet set => Look(memory with { Modes = memory.Modes.SetItem(set.Appliance, set.Mode) }, byAppliance[set.Appliance], set.Now, isEvidence: false, ref transitions),
            AlarmEvent.CurveSet { Curve: { } curve } set => memory with { Curves = memory.Curves.SetItem(set.Appliance, curve) },
            AlarmEvent.CurveSet set => memory with { Curves = memory.Curves.Remove(set.Appliance) },
            AlarmEvent.PartReported report => memory with { Parts = memory.Parts.SetItem(report.Part.Part, report.Part) },
            AlarmEvent.Acknowledged act => Acknowledge(memory, act, ref transitions),
            _ => throw new ArgumentException($"unknown event {happened}", nameof(happened)),
        };
        return new Stepped(memory, transitions ?? (IReadOnlyList<AlarmTransition>)[]);
    }

    /// <summary>The last occurrence of each alarm that is not normal; one whose sensors are silent is marked.</summary>
    public IEnumerable<AlarmOccurrence> Standing(StudioMemory memory, Instant now)
    {
        for (var w = 0; w < watches.Length; w++)
        {
            if (memory.Alarms[w] is not { Occurrence: { } occurrence, State: not AlarmState.Normal } alarm) continue;
            var situation = new Situation(memory, now);
            yield return occurrence with { IsUnverified = alarm.State.IsActive() && watches[w].Rule.Inputs.Any(i => situation.Fresh(i) is null) };
        }
    }

    /// <summary>A clock that has jumped, because the computer slept or was too busy, begins to listen anew.</summary>
    StudioMemory Awake(StudioMemory memory, Instant now) =>
        memory.LastTick is { } last && now - last > pace.HeldUp ? memory with { StartedAt = now.Whole(), LastTick = now } : memory with { LastTick = now };

    StudioMemory Hear(StudioMemory memory, AlarmEvent.Sample sample, ref List<AlarmTransition>? transitions)
    {
        if (!channels.TryGetValue(sample.Channel, out var c)) return memory;
        var before = memory.Channels[c];
        if (!sample.IsPlausible)
            return memory with { Channels = memory.Channels.SetItem(c, before with { HeardArrival = sample.ArrivedAt, Unusable = sample.Value }) };
        // An older reading that arrives after a newer one proves that the device lives, and nothing about now.
        if (before.At >= sample.At)
            return memory with { Channels = memory.Channels.SetItem(c, before with { HeardArrival = sample.ArrivedAt, GoodArrival = sample.ArrivedAt }) };
        memory = memory with { Channels = memory.Channels.SetItem(c, new ChannelMemory(sample.At, sample.Value, sample.ArrivedAt, sample.ArrivedAt)) };
        return Look(memory, byChannel[c], sample.At, isEvidence: true, ref transitions);
    }

    StudioMemory Look(StudioMemory memory, IEnumerable<int> which, Instant at, bool isEvidence, ref List<AlarmTransition>? transitions)
    {
        at = at.Whole();   // what is remembered must survive being stored
        foreach (var w in which)
        {
            var before = memory.Alarms[w];
            var after = watches[w].Look(memory, before, at, isEvidence, CauseOf(memory, w), out var transition);
            if (!ReferenceEquals(before, after)) memory = memory with { Alarms = memory.Alarms.SetItem(w, after) };
            if (transition is not null) (transitions ??= []).Add(transition);
        }
        return memory;
    }

    /// <summary>The first cause that stands, or is about to: a cause often takes longer to be raised than what follows from it.</summary>
    string? CauseOf(StudioMemory memory, int watch)
    {
        foreach (var cause in watches[watch].Causes)
        {
            var alarm = memory.Alarms[cause];
            if (alarm.State.IsActive() || alarm.Timing.WrongSince is not null) return Definitions[cause].Id;
        }
        return null;
    }

    StudioMemory Acknowledge(StudioMemory memory, AlarmEvent.Acknowledged act, ref List<AlarmTransition>? transitions)
    {
        for (var w = 0; w < watches.Length; w++)
        {
            var alarm = memory.Alarms[w];
            if (alarm.Occurrence is not { } occurrence || occurrence.Id != act.OccurrenceId || occurrence.AcknowledgedAt is not null) continue;
            var state = AlarmStates.Next(alarm.State, AlarmInput.Acknowledge);
            var known = occurrence with { State = state, AcknowledgedAt = act.At, AcknowledgedBy = act.Who };
            (transitions ??= []).Add(new AlarmTransition(known, AlarmChange.Acknowledged, act.At, act.Who));
            return memory with { Alarms = memory.Alarms.SetItem(w, alarm with { State = state, Occurrence = known }) };
        }
        return memory;
    }

    int[] Where(Func<Watch, bool> isIt) => [.. Enumerable.Range(0, watches.Length).Where(w => isIt(watches[w]))];
}
