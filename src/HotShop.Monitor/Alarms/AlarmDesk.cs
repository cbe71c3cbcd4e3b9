using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Alarms;

/// <summary>
/// Runs the alarms inside the one write transaction: readings and the clock in, rows and transitions out, all of it or nothing.
/// What it decides is in <see cref="AlarmEngine"/>; here it is only kept.
/// </summary>
sealed class AlarmDesk : IAlarmDesk, IReadingStage, ITickStage
{
    readonly AlarmEngine engine;
    readonly Surroundings surroundings;
    readonly AlarmHistory history;
    readonly IStoreWriter writer;
    readonly TimeProvider clock;

    /// <summary>In the transaction under way; only the writer's thread touches it.</summary>
    StudioMemory working;

    /// <summary>As committed: what everybody else sees.</summary>
    volatile StudioMemory shown;

    IReadOnlyList<AlarmOccurrence> orphans;

    public AlarmDesk(AlarmEngine engine, AlarmMemoryLoad stored, Surroundings surroundings, AlarmHistory history, IStoreWriter writer, TimeProvider clock)
    {
        (this.engine, this.surroundings, this.history, this.writer, this.clock) = (engine, surroundings, history, writer, clock);
        (working, orphans) = stored.Load(clock.GetCurrentInstant().Whole());
        shown = working;
    }

    public IReadOnlyList<AlarmOccurrence> Current
    {
        get
        {
            var now = clock.GetCurrentInstant();
            return [.. engine.Standing(shown, now).OrderBy(o => o.Priority).ThenBy(o => o.Since)];
        }
    }

    /// <summary>For tests: a rolled back piece of work leaves this very object.</summary>
    internal StudioMemory Memory => working;

    public void React(IReadOnlyList<StoredReading> readings, WriteScope scope)
    {
        var steps = new List<AlarmEvent>(surroundings.News(working, scope.Now));
        foreach (var reading in readings)
        {
            if (!reading.IsLive) continue;
            if (reading.IsCanonical) steps.Add(new AlarmEvent.Sample(reading.Channel.Id, reading.At, reading.Value, reading.IsPlausible, reading.ArrivedAt));
            // A voltage that no couple gives becomes no temperature; that it came shows that the device lives.
            else if (!reading.IsPlausible) steps.Add(new AlarmEvent.Sample(reading.Channel.Id, reading.At, double.NaN, false, reading.ArrivedAt));
        }
        if (steps.Count > 0) Run(steps, scope);
    }

    public void Tick(WriteScope scope)
    {
        EndOrphans(scope);
        Run([.. surroundings.News(working, scope.Now), new AlarmEvent.Tick(scope.Now)], scope);
    }

    public Task<AlarmOccurrence?> Acknowledge(string occurrenceId, string who, CancellationToken stop) =>
        writer.Write(scope => Acknowledge(occurrenceId, who, scope), stop);

    public AlarmOccurrence? Acknowledge(string occurrenceId, string who, WriteScope scope)
    {
        if (Run([new AlarmEvent.Acknowledged(occurrenceId, who, scope.Now.Whole())], scope) is [var done]) return done.Occurrence;
        // Not the last of its alarm: it has rung again since, and that ringing is another's to take.
        var known = AlarmHistory.Find(occurrenceId, scope);
        if (known is null or { AcknowledgedAt: not null }) return known;
        var after = known with { State = AlarmStates.Next(known.State, AlarmInput.Acknowledge), AcknowledgedAt = scope.Now.Whole(), AcknowledgedBy = who };
        history.Keep([new AlarmTransition(after, AlarmChange.Acknowledged, after.AcknowledgedAt!.Value, who)], scope);
        return after;
    }

    public AlarmOccurrence? Find(string occurrenceId)
    {
        foreach (var alarm in shown.Alarms) if (alarm.Occurrence?.Id == occurrenceId) return alarm.Occurrence;
        return history.Find(occurrenceId);
    }

    public IReadOnlyList<AlarmOccurrence> History(Instant from, Instant to) => history.Between(from, to);

    List<AlarmTransition> Run(IEnumerable<AlarmEvent> steps, WriteScope scope)
    {
        var before = working;
        scope.OnRollback(() => working = before);
        var transitions = new List<AlarmTransition>();
        foreach (var step in steps)
        {
            var (memory, happened) = engine.Step(working, step);
            working = memory;
            transitions.AddRange(happened);
        }
        for (var i = 0; i < engine.Definitions.Count; i++)
            if (!ReferenceEquals(before.Alarms[i], working.Alarms[i])) PendingRows.Write(engine.Definitions[i].Id, before.Alarms[i], working.Alarms[i], scope);
        history.Keep(transitions, scope);
        var after = working;
        scope.OnCommit(() => shown = after);
        return transitions;
    }

    /// <summary>An alarm that the configuration no longer has can never clear by itself: its end is that nobody watches it any more.</summary>
    void EndOrphans(WriteScope scope)
    {
        if (orphans.Count == 0) return;
        var ended = orphans;
        orphans = [];
        scope.OnRollback(() => orphans = ended);
        var at = scope.Now.Whole();
        history.Keep([.. ended.Select(o => new AlarmTransition(o with { State = AlarmStates.Next(o.State, AlarmInput.ConditionFalse), ClearedAt = at }, AlarmChange.Cleared, at, null))], scope);
    }
}
