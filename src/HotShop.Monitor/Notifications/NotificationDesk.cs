using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>
/// Turns what happens to alarms, and time passing without an answer, into messages in the outbox, inside the transaction of the cause.
/// Sending is somebody else's work: what is written here goes out even if the process dies at the next instruction.
/// </summary>
sealed partial class NotificationDesk(StudioPlan plan, CallOrder order, OutboxBell bell, TickPulse pulse, ILogger<NotificationDesk> log) : ITransitionStage, ITickStage
{
    Instant nextForgetting = Instant.MinValue;

    public void React(IReadOnlyList<AlarmTransition> transitions, WriteScope scope)
    {
        foreach (var transition in transitions)
            switch (transition.Change)
            {
                case AlarmChange.Raised: Raised(transition, scope); break;
                case AlarmChange.Acknowledged: Acknowledged(transition, scope); break;
                case AlarmChange.Cleared: Cleared(transition, scope); break;
            }
    }

    public void Tick(WriteScope scope)
    {
        scope.OnCommit(pulse.Beat);
        Forget(scope);
        foreach (var stored in CallStories.Due(scope, order.Settings))
            Apply(CallPlan.Waited(stored.Story, scope.Now, order.Settings), stored.Alarm, scope);
    }

    /// <summary>Whoever was called wants one more person, now.</summary>
    /// <returns>Null where nobody was ever called about this occurrence.</returns>
    public CallDecision? WakeNext(string occurrence, WriteScope scope)
    {
        if (CallStories.Find(scope.Connection, occurrence) is not { } stored) return null;
        var decision = CallPlan.Woken(stored.Story, scope.Now, order.Settings);
        Apply(decision, stored.Alarm, scope);
        return decision;
    }

    /// <summary>A message was refused for good. Where that leaves nobody reached, the next person is called at once.</summary>
    public void Refused(string occurrence, WriteScope scope)
    {
        if (CallStories.Find(scope.Connection, occurrence) is not { Story.Phase: CallPhase.Calling } stored || Outbox.Told(scope.Connection, occurrence).Count > 0) return;
        Apply(CallPlan.Unreached(stored.Story, scope.Now, order.Settings), stored.Alarm, scope);
    }

    /// <summary>Once a day messages older than a year and a month go, a few at a time.</summary>
    void Forget(WriteScope scope)
    {
        if (scope.Now < nextForgetting) return;
        nextForgetting = scope.Now + Duration.FromDays(1);
        Outbox.Forget(scope, scope.Now - Duration.FromDays(400));
    }

    void Raised(AlarmTransition transition, WriteScope scope)
    {
        var alarm = transition.Occurrence;
        var decision = CallPlan.Raised(alarm.Id, alarm.Priority, alarm.InhibitedBy is not null, scope.Now, order.Settings);
        var snapshot = AlarmSnapshot.Of(alarm);
        if (!CallStories.Begin(scope, decision, snapshot)) return;
        AddCalls(decision, snapshot, scope);
    }

    void Acknowledged(AlarmTransition transition, WriteScope scope)
    {
        if (CallStories.Find(scope.Connection, transition.Occurrence.Id) is not { } stored) return;
        var decision = CallPlan.Acknowledged(stored.Story);
        if (decision.Reason != CallReason.SomebodyHasIt) return;
        var who = transition.Who ?? "somebody";
        var told = Outbox.Told(scope.Connection, stored.Story.Occurrence);
        Outbox.WithdrawCalls(scope, stored.Story.Occurrence);
        CallStories.Update(scope, decision, heldBy: who);
        // Whoever was woken for nothing may go back to sleep; the one who has it knows.
        foreach (var to in Known(told).Where(t => !IsSame(t.Person, who)))
            Add(MessageKind.Held, decision, to, stored.Alarm, MessageText.Held(stored.Alarm, decision.Story.Step, who, transition.At, plan.Zone), scope);
        Announce(decision, scope);
    }

    void Cleared(AlarmTransition transition, WriteScope scope)
    {
        if (CallStories.Find(scope.Connection, transition.Occurrence.Id) is not { } stored) return;
        var decision = CallPlan.Ended(stored.Story);
        if (decision.Reason != CallReason.HasEnded) return;
        CallStories.Update(scope, decision);
        var text = MessageText.Closing(stored.Alarm, decision.Story.Step, transition.At, stored.HeldBy, plan.Zone);
        foreach (var to in Known(Outbox.Told(scope.Connection, stored.Story.Occurrence)))
            Add(MessageKind.Closing, decision, to, stored.Alarm, text, scope);
        Announce(decision, scope);
    }

    void Apply(CallDecision decision, AlarmSnapshot alarm, WriteScope scope)
    {
        CallStories.Update(scope, decision);
        AddCalls(decision, alarm, scope);
    }

    void AddCalls(CallDecision decision, AlarmSnapshot alarm, WriteScope scope)
    {
        var text = MessageText.Call(alarm, decision.Story.Step, plan.Zone);
        foreach (var call in decision.Calls)
            foreach (var to in CallOrder.OutletsOf(order.InOrder[call.Place]))
            {
                Outbox.Replace(scope, decision.Story.Occurrence, decision.Story.Step, to);
                Add(MessageKind.Call, decision with { Reason = call.Reason }, to, alarm, text, scope);
            }
        if (decision.Calls.Count > 0 || decision.Story.Phase == CallPhase.Quiet) Announce(decision, scope);
    }

    void Add(MessageKind kind, CallDecision decision, OutletAddress to, AlarmSnapshot alarm, string text, WriteScope scope)
    {
        var appliance = plan.Appliance(alarm.Appliance)?.Name ?? alarm.Appliance;
        var title = MessageText.Title(decision.Reason, appliance, alarm.Kind, decision.Story.Priority);
        Outbox.Add(scope, kind, decision.Story.Occurrence, decision.Story.Step, to, decision.Story.Priority, decision.Reason.ToString(), title, text);
    }

    IEnumerable<OutletAddress> Known(IEnumerable<(string Person, string Outlet)> told) =>
        told.Select(t => order.Find(t.Person, t.Outlet)).OfType<OutletAddress>();

    static bool IsSame(PersonOptions person, string who) => person.Id == who || person.Name == who;

    void Announce(CallDecision decision, WriteScope scope) => scope.OnCommit(() =>
    {
        Decided(decision.Story.Occurrence, decision.Reason, decision.Story.Step, decision.Calls.Count);
        bell.Ring();
    });

    [LoggerMessage(Level = LogLevel.Information, Message = "Calling about {Occurrence}: {Reason}, round {Step}, {People} called")]
    partial void Decided(string occurrence, CallReason reason, int step, int people);
}
