using HotShop.Monitor.Store;

namespace HotShop.Monitor.Notifications;

/// <summary>How one way to one phone fares.</summary>
/// <param name="FailingSince">Wall clock; null while the last attempt went well or nothing was tried.</param>
/// <param name="IsRefused">The last message was refused for good: somebody must look.</param>
sealed record LaneState(DateTimeOffset? FailingSince, string? Problem, bool IsRefused)
{
    public static readonly LaneState Well = new(null, null, false);

    /// <summary>Nothing answered at all: other messages would fare no better now.</summary>
    public bool IsUnanswered { get; init; }
}

/// <summary>
/// Sends what waits for one way to one phone, oldest first. Lanes know nothing of each other: a slow mail server delays mail alone.
/// Times here are the wall clock's even when the studio's clock is scaled for a demo.
/// </summary>
sealed partial class OutboxLane(
    OutletAddress to, IOutlet outlet, NotificationDesk desk, NightLinks links, IStoreWriter writer, IStoreReader reader, TimeProvider wallClock, Func<double> jitter, ILogger log)
{
    /// <summary>Sent, but the store could not note it yet: not to be sent again by this process.</summary>
    readonly Dictionary<long, string> unrecorded = [];
    int failures;
    bool hasLookedBack;

    public OutletAddress To => to;

    public LaneState State { get; private set; } = LaneState.Well;

    /// <summary>Sends all that can be sent now.</summary>
    /// <returns>When to try again what could not; null when nothing waits.</returns>
    public async Task<TimeSpan?> Step(CancellationToken stop)
    {
        IReadOnlyList<OutboxRow> pending;
        using (var connection = reader.Open())
        {
            pending = Outbox.Pending(connection, to.Person.Id, to.Outlet);
            // A way that was refused before a restart is not well because of the restart.
            if (!hasLookedBack && Outbox.LastRefusal(connection, to.Person.Id, to.Outlet) is { } refusal) State = new(wallClock.GetUtcNow(), refusal, IsRefused: true);
            hasLookedBack = true;
        }
        var stuck = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in pending)
        {
            // The end of an alarm must not overtake its beginning.
            if (stuck.Contains(row.Occurrence)) continue;
            if (await Send(row, stop)) continue;
            stuck.Add(row.Occurrence);
            if (State.IsUnanswered) break;
        }
        if (stuck.Count > 0) return BackOff.After(++failures, jitter());
        failures = 0;
        return null;
    }

    /// <returns>False when the message still waits.</returns>
    async Task<bool> Send(OutboxRow row, CancellationToken stop)
    {
        if (unrecorded.TryGetValue(row.Id, out var proof))
        {
            await Record(row, proof, stop);
            return true;
        }
        var message = new OutgoingMessage(row.Key, row.Kind, row.Occurrence, row.Step, row.Priority, row.Title, row.Message, links.For(row));
        switch (await outlet.Send(to, message, stop))
        {
            case SendResult.Accepted accepted:
                State = LaneState.Well;
                await Record(row, accepted.Proof, stop);
                Delivered(row.Occurrence, row.Step, to.Person.Id, to.Outlet, row.Attempts + 1);
                return true;
            case SendResult.Refused refused:
                State = new(State.FailingSince ?? wallClock.GetUtcNow(), refused.Why, IsRefused: true);
                await writer.Write(scope =>
                {
                    Outbox.Failed(scope, row.Id, refused.Why, isForGood: true);
                    if (row.Kind == MessageKind.Call) desk.Refused(row.Occurrence, scope);
                }, stop);
                RefusedForGood(row.Occurrence, row.Step, to.Person.Id, to.Outlet, refused.Why);
                return true;
            case SendResult.TryAgain later:
                // An outage of hours is one line in the log, not one a minute; the outbox keeps the count.
                if (State.Problem != later.Why) NotYet(row.Occurrence, row.Step, to.Person.Id, to.Outlet, later.Why);
                State = new(State.FailingSince ?? wallClock.GetUtcNow(), later.Why, IsRefused: false) { IsUnanswered = !later.HasAnswered };
                await writer.Write(scope => { Outbox.Failed(scope, row.Id, later.Why, isForGood: false); }, stop);
                return false;
            default: throw new InvalidOperationException("an outlet answered with a result nobody knows");
        }
    }

    async Task Record(OutboxRow row, string proof, CancellationToken stop)
    {
        unrecorded[row.Id] = proof;
        await writer.Write(scope => { Outbox.Sent(scope, row.Id, proof); }, stop);
        unrecorded.Remove(row.Id);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Sent {Occurrence} #{Step} to {Person} by {Outlet} at attempt {Attempt}")]
    partial void Delivered(string occurrence, int step, string person, string outlet, int attempt);

    [LoggerMessage(Level = LogLevel.Error, Message = "Could not send {Occurrence} #{Step} to {Person} by {Outlet} and will not try again: {Why}")]
    partial void RefusedForGood(string occurrence, int step, string person, string outlet, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Could not send {Occurrence} #{Step} to {Person} by {Outlet} yet: {Why}")]
    partial void NotYet(string occurrence, int step, string person, string outlet, string why);
}
