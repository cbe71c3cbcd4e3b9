using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <summary>Somebody who was called about this occurrence.</summary>
public sealed record ToldPerson(string Name, string? Phone);

/// <summary>What the night page shows to whoever holds the link.</summary>
/// <param name="You">Whose phone the link was sent to; null for somebody signed in who came without a link.</param>
/// <param name="Next">Who is called next; null when nobody is left or somebody has it.</param>
/// <param name="NextAt">When that happens by itself; null when it does not.</param>
/// <param name="HeldBy">Who said "I have it"; null while nobody did.</param>
public sealed record NightView(
    AlarmOccurrence Occurrence, PersonOptions? You, PersonOptions? Next, Instant? NextAt, string? HeldBy, Instant? HeldAt, IReadOnlyList<ToldPerson> Told);

public enum NightOutcome
{
    /// <summary>No such link, or no longer. The page says the same for every reason.</summary>
    Unknown,

    /// <summary>You have it now, or already had.</summary>
    Taken,

    /// <summary>Somebody else had it before you; <see cref="NightView.HeldBy"/> says who.</summary>
    AlreadyTaken,

    /// <summary>The next person is being called.</summary>
    Woken,

    /// <summary>Nobody is left who was not called: everybody is called again.</summary>
    EverybodyCalledAgain,

    /// <summary>It has ended; nobody is called any more.</summary>
    Ended,
}

/// <param name="View">As it is afterwards; null when <see cref="NightOutcome.Unknown"/>.</param>
/// <param name="Woken">Name of the person being called, for <see cref="NightOutcome.Woken"/>.</param>
public sealed record NightResult(NightOutcome Outcome, NightView? View, string? Woken = null);

/// <summary>
/// Behind the page <c>/night/{occurrence}?t=TOKEN</c>. Showing never changes anything: mail scanners and link previews fetch links. Only the buttons act.
/// </summary>
public interface INightDesk
{
    /// <returns>Null for a link that is unknown, forged, for another occurrence, expired, or more than 8 h after the end: the page says the same for all.</returns>
    NightView? Look(string occurrence, string? token);

    /// <summary>For somebody signed in, who needs no token.</summary>
    NightView? LookSignedIn(string occurrence);

    /// <summary>"I have it". A second tap changes nothing.</summary>
    Task<NightResult> Take(string occurrence, string? token, CancellationToken stop);

    /// <summary>"Wake the next person": the next to call is called now.</summary>
    Task<NightResult> WakeNext(string occurrence, string? token, CancellationToken stop);
}

sealed class NightDesk(
    IAlarmDesk alarms, NotificationDesk notifications, NightLinks links, CallOrder order, IStoreWriter writer, IStoreReader reader, TimeProvider time) : INightDesk
{
    public NightView? Look(string occurrence, string? token) =>
        Claim(occurrence, token) is { } claim && alarms.Find(occurrence) is { } alarm ? View(alarm, order.Find(claim.Person)) : null;

    public NightView? LookSignedIn(string occurrence) => alarms.Find(occurrence) is { } alarm ? View(alarm, null) : null;

    public async Task<NightResult> Take(string occurrence, string? token, CancellationToken stop)
    {
        if (Claim(occurrence, token) is not { } claim) return new(NightOutcome.Unknown, null);
        var you = order.Find(claim.Person);
        var name = you?.Name ?? claim.Person;
        var alarm = await writer.Write(scope =>
        {
            // The tap is the proof that this way to this phone works, whether or not it comes first.
            Receipts.Record(scope, claim);
            return alarms.Acknowledge(occurrence, name, scope);
        }, stop);
        if (alarm is null) return new(NightOutcome.Unknown, null);
        var outcome = alarm.AcknowledgedBy is { } by ? by == name ? NightOutcome.Taken : NightOutcome.AlreadyTaken : NightOutcome.Ended;
        return new(outcome, View(alarm, you));
    }

    public async Task<NightResult> WakeNext(string occurrence, string? token, CancellationToken stop)
    {
        if (Claim(occurrence, token) is not { } claim) return new(NightOutcome.Unknown, null);
        var decision = await writer.Write(scope =>
        {
            Receipts.Record(scope, claim);
            return notifications.WakeNext(occurrence, scope);
        }, stop);
        if (decision is null || alarms.Find(occurrence) is not { } alarm) return new(NightOutcome.Unknown, null);
        var outcome = decision.Reason switch
        {
            CallReason.WokenByHand => NightOutcome.Woken,
            CallReason.EverybodyIsCalled => NightOutcome.EverybodyCalledAgain,
            _ => NightOutcome.Ended,
        };
        var woken = decision.Reason == CallReason.WokenByHand ? order.InOrder[decision.Calls[0].Place].Name : null;
        return new(outcome, View(alarm, order.Find(claim.Person)), woken);
    }

    LinkClaim? Claim(string occurrence, string? token)
    {
        var now = time.GetUtcNow().ToInstant();
        if (links.Verify(token, now) is not { IsTest: false } claim || claim.Occurrence != occurrence) return null;
        return alarms.Find(occurrence) is { ClearedAt: { } endedAt } && now > endedAt + NightLinks.AfterTheEnd ? null : claim;
    }

    NightView View(AlarmOccurrence alarm, PersonOptions? you)
    {
        using var connection = reader.Open();
        var stored = CallStories.Find(connection, alarm.Id);
        var told = Outbox.Told(connection, alarm.Id).Select(t => t.Person).Distinct().Select(order.Find).OfType<PersonOptions>().Select(p => new ToldPerson(p.Name, p.Phone)).ToList();
        var isCalling = stored is { Story.Phase: CallPhase.Calling };
        var next = stored is not null && stored.Story.Reached < order.InOrder.Count && stored.Story.Phase is CallPhase.Calling or CallPhase.Held
            ? order.InOrder[stored.Story.Reached] : null;
        Instant? nextAt = isCalling && next is not null ? stored!.Story.ReachedAt + order.Settings.NextAfter : null;
        return new(alarm, you, next, nextAt, alarm.AcknowledgedBy, alarm.AcknowledgedAt, told);
    }
}
