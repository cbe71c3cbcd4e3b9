using HotShop.Monitor.Alarms.Words;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>One alarm: its rule, its timing and its state, put together.</summary>
internal sealed class Watch(Rule rule, IReadOnlyList<int> causes, DateTimeZone zone)
{
    readonly AlarmDefinition definition = rule.Definition;

    public Rule Rule { get; } = rule;

    /// <summary>Places of the alarms that are the cause of this one.</summary>
    public IReadOnlyList<int> Causes { get; } = causes;

    /// <param name="studio">All that is known.</param>
    /// <param name="before">This alarm's part of it.</param>
    /// <param name="at">Time of the sample, or of the clock for what watches the clock.</param>
    /// <param name="isEvidence">A sample, or the clock; not so where only the mode has changed: that can end something, it proves nothing.</param>
    /// <param name="cause">Id of the alarm that stands, or is about to stand, and from which this one follows.</param>
    /// <param name="transition">What happened, if anything did.</param>
    /// <returns>The same object where nothing changed.</returns>
    public AlarmMemory Look(StudioMemory studio, AlarmMemory before, Instant at, bool isEvidence, string? cause, out AlarmTransition? transition)
    {
        transition = null;
        var isActive = before.State.IsActive();
        if (isActive && before.Occurrence!.InhibitedBy is not null && cause is null) return Release(before, at, out transition);

        var remembered = before.Rule;
        var finding = Rule.Judge(new Situation(studio, at), before, ref remembered);
        if (!isEvidence && finding.Verdict != Verdict.NotWanted) return before;
        var (timing, turn) = Timing.Next(before.Timing, isActive, finding, at, finding.OnDelay ?? definition.OnDelay, definition.OffDelay, Rule.SamplesWanted);
        var after = ReferenceEquals(remembered, before.Rule) && ReferenceEquals(timing, before.Timing) ? before : before with { Rule = remembered, Timing = timing };
        return turn switch
        {
            Turn.Raise => Raise(after, finding, at, cause, out transition),
            Turn.Clear => Clear(after, at, out transition),
            _ => after,
        };
    }

    AlarmMemory Raise(AlarmMemory memory, in Finding finding, Instant at, string? cause, out AlarmTransition transition)
    {
        var since = memory.Timing.WrongSince!.Value;
        // An occurrence is known by its start: one that begins again with the same cause gets a later one.
        if (memory.Occurrence is { } last && since <= (last.ClearedAt ?? last.Since)) since = (last.ClearedAt ?? last.Since) + Duration.FromTicks(10);
        var state = AlarmStates.Next(memory.State, AlarmInput.ConditionTrue);
        var occurrence = new AlarmOccurrence(OccurrenceIds.Of(definition.Id, since), definition.Id, definition.Appliance, definition.Channel, definition.Kind,
            cause is null ? definition.Priority : 3, state, since, finding.Value, finding.Limit ?? definition.Limit, definition.Unit,
            Wording.Of(definition, finding, since, zone), null, null, null) { InhibitedBy = cause };
        transition = new AlarmTransition(occurrence, AlarmChange.Raised, at, null);
        return memory with { State = state, Timing = Timing.Quiet, Occurrence = occurrence };
    }

    static AlarmMemory Clear(AlarmMemory memory, Instant at, out AlarmTransition transition)
    {
        var state = AlarmStates.Next(memory.State, AlarmInput.ConditionFalse);
        var occurrence = memory.Occurrence! with { State = state, ClearedAt = Instant.Max(at, memory.Occurrence.Since) };
        transition = new AlarmTransition(occurrence, AlarmChange.Cleared, at, null);
        return memory with { State = state, Timing = Timing.Quiet, Occurrence = occurrence };
    }

    /// <summary>Its cause is over: it ends as a child, and if it is still wrong after its own delay it rings in its own right.</summary>
    static AlarmMemory Release(AlarmMemory memory, Instant at, out AlarmTransition transition) =>
        Clear(memory, at, out transition) with { NotBefore = at };
}
