using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>How far the calling about an occurrence has gone. Quiet: nobody was called and nobody will be.</summary>
public enum CallPhase { Calling, Held, Ended, Quiet }

/// <summary>Why something is sent, or why not. The log, the page and the tests show the same word.</summary>
public enum CallReason
{
    FirstTime, NotAcknowledged, NextToCall, NobodyReached, WokenByHand, SomebodyHasIt, HasEnded,
    WaitsForMorning, PartOfATrouble, NobodyToCall, NotYet, AlreadyHeld, AlreadyEnded, EverybodyIsCalled,
}

/// <param name="RepeatAfter">Time without an answer until all who were called are called again.</param>
/// <param name="NextAfter">Time without an answer until one more person is called as well.</param>
/// <param name="CallUpToPriority">Lowest urgency that goes to a phone, 1 or 2.</param>
/// <param name="People">How many there are in the order of calling.</param>
public sealed record CallSettings(Duration RepeatAfter, Duration NextAfter, int CallUpToPriority, int People)
{
    /// <summary>No deadline lies further ahead than this; one that does was stored before the clock was set back.</summary>
    public Duration Longest => Duration.Max(RepeatAfter, NextAfter);
}

/// <param name="Step">Number of the last round of messages.</param>
/// <param name="Reached">People called so far, counted in the order of calling.</param>
public sealed record CallStory(string Occurrence, int Priority, CallPhase Phase, int Step, int Reached, Instant ReachedAt, Instant LastRoundAt);

/// <summary>One person to be called, by place in the order of calling.</summary>
public sealed record Call(int Place, CallReason Reason);

/// <param name="NextAt">When to decide again; null when nothing is due any more.</param>
public sealed record CallDecision(CallReason Reason, CallStory Story, IReadOnlyList<Call> Calls, Instant? NextAt);

/// <summary>Who is called about an alarm, and when. No clock, no I/O: state and time in, decision with its reason out.</summary>
public static class CallPlan
{
    /// <param name="isPartOfATrouble">A larger trouble, such as mains lost, has called already: one call, not fourteen.</param>
    public static CallDecision Raised(string occurrence, int priority, bool isPartOfATrouble, Instant now, CallSettings settings)
    {
        var quiet = new CallStory(occurrence, priority, CallPhase.Quiet, 0, 0, now, now);
        if (isPartOfATrouble) return Silent(CallReason.PartOfATrouble, quiet);
        if (priority > settings.CallUpToPriority) return Silent(CallReason.WaitsForMorning, quiet);
        if (settings.People == 0) return Silent(CallReason.NobodyToCall, quiet);
        var story = quiet with { Phase = CallPhase.Calling, Step = 1, Reached = 1 };
        return new(CallReason.FirstTime, story, [new(0, CallReason.FirstTime)], NextAt(story, settings));
    }

    /// <summary>Time has passed without an answer.</summary>
    public static CallDecision Waited(CallStory story, Instant now, CallSettings settings)
    {
        if (story.Phase != CallPhase.Calling) return Silent(Settled(story), story);
        // A clock set back would put off the next call by as much: count from now instead.
        var kept = story with { ReachedAt = Instant.Min(story.ReachedAt, now), LastRoundAt = Instant.Min(story.LastRoundAt, now) };
        var isRepeatDue = now - kept.LastRoundAt >= settings.RepeatAfter;
        var isNextDue = kept.Reached < settings.People && now - kept.ReachedAt >= settings.NextAfter;
        if (!isRepeatDue && !isNextDue) return new(CallReason.NotYet, kept, [], NextAt(kept, settings));

        List<Call> calls = isRepeatDue ? [.. Enumerable.Range(0, Math.Min(kept.Reached, settings.People)).Select(p => new Call(p, CallReason.NotAcknowledged))] : [];
        if (isNextDue) calls.Add(new(kept.Reached, CallReason.NextToCall));
        var after = kept with
        {
            Step = kept.Step + 1,
            Reached = isNextDue ? kept.Reached + 1 : kept.Reached,
            ReachedAt = isNextDue ? now : kept.ReachedAt,
            LastRoundAt = isRepeatDue ? now : kept.LastRoundAt,
        };
        return new(isNextDue ? CallReason.NextToCall : CallReason.NotAcknowledged, after, calls, NextAt(after, settings));
    }

    /// <summary>Whoever was called asks for the next person at once. Where nobody is left, everybody is called again.</summary>
    public static CallDecision Woken(CallStory story, Instant now, CallSettings settings)
    {
        // Somebody who has it may still find that it takes two: then the next is called, and the calling goes on from there.
        if (story.Phase is CallPhase.Ended or CallPhase.Quiet) return Silent(Settled(story), story);
        var isAnyoneLeft = story.Reached < settings.People;
        IReadOnlyList<Call> calls = isAnyoneLeft
            ? [new(story.Reached, CallReason.WokenByHand)]
            : [.. Enumerable.Range(0, settings.People).Select(p => new Call(p, CallReason.WokenByHand))];
        var after = story with
        {
            Step = story.Step + 1,
            Reached = isAnyoneLeft ? story.Reached + 1 : story.Reached,
            ReachedAt = now,
            LastRoundAt = isAnyoneLeft ? story.LastRoundAt : now,
        };
        var nextAt = after.Phase == CallPhase.Calling ? NextAt(after, settings) : null;
        return new(isAnyoneLeft ? CallReason.WokenByHand : CallReason.EverybodyIsCalled, after, calls, nextAt);
    }

    /// <summary>Every message so far was refused for good: waiting for an answer would be waiting for nothing, so the next person is called at once.</summary>
    public static CallDecision Unreached(CallStory story, Instant now, CallSettings settings)
    {
        if (story.Phase != CallPhase.Calling) return Silent(Settled(story), story);
        if (story.Reached >= settings.People) return new(CallReason.EverybodyIsCalled, story, [], NextAt(story, settings));
        var after = story with { Step = story.Step + 1, Reached = story.Reached + 1, ReachedAt = now };
        return new(CallReason.NobodyReached, after, [new(story.Reached, CallReason.NobodyReached)], NextAt(after, settings));
    }

    /// <summary>Somebody has it: nothing is repeated any more.</summary>
    public static CallDecision Acknowledged(CallStory story) => story.Phase == CallPhase.Calling
        ? Silent(CallReason.SomebodyHasIt, story with { Phase = CallPhase.Held, Step = story.Step + 1 })
        : Silent(Settled(story), story);

    /// <summary>The condition has ended: all who were told hear it once.</summary>
    public static CallDecision Ended(CallStory story) => story.Phase is CallPhase.Calling or CallPhase.Held
        ? Silent(CallReason.HasEnded, story with { Phase = CallPhase.Ended, Step = story.Step + 1 })
        : Silent(Settled(story), story);

    static CallDecision Silent(CallReason reason, CallStory story) => new(reason, story, [], null);

    static CallReason Settled(CallStory story) => story.Phase switch
    {
        CallPhase.Held => CallReason.AlreadyHeld,
        CallPhase.Ended => CallReason.AlreadyEnded,
        _ => CallReason.WaitsForMorning,
    };

    static Instant? NextAt(CallStory story, CallSettings settings)
    {
        var repeatAt = story.LastRoundAt + settings.RepeatAfter;
        return story.Reached < settings.People ? Instant.Min(repeatAt, story.ReachedAt + settings.NextAfter) : repeatAt;
    }
}
