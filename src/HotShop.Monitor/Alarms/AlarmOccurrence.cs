using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Condition and acknowledgement after ANSI/ISA-18.2-2016.</summary>
public enum AlarmState { Normal, Unacknowledged, Acknowledged, ReturnedUnacknowledged }

/// <summary>The words of an alarm, each a plain sentence; the same on every page and in every message.</summary>
/// <param name="Sentence">What and where with value against limit, e.g. "Furnace 1 crown is 1302 °C (2376 °F), limit 1290 °C (2354 °F)".</param>
/// <param name="Consequence">What it may lead to.</param>
/// <param name="FirstStep">What to do first.</param>
/// <param name="Caution">What not to do, and who decides.</param>
public sealed record AlarmWords(string Sentence, string Consequence, string FirstStep, string Caution);

/// <summary>One time that an alarm was raised. Acting names the occurrence, never the alarm.</summary>
/// <param name="Id">Alarm id and start, e.g. <c>furnace-1.overheat.crown@2026-03-01T02:14:05.12Z</c> shortened to a URL-safe text.</param>
/// <param name="AlarmId">e.g. <c>furnace-1.overheat.crown</c>.</param>
/// <param name="Kind">e.g. <c>overheat</c>.</param>
public sealed record AlarmOccurrence(
    string Id, string AlarmId, string Appliance, string? Channel, string Kind, int Priority, AlarmState State, Instant Since,
    double? Value, double? Limit, string? Unit, AlarmWords Words,
    Instant? AcknowledgedAt, string? AcknowledgedBy, Instant? ClearedAt)
{
    /// <summary>Id of the alarm that is its cause: this one is shown but calls nobody (its priority is 3).</summary>
    public string? InhibitedBy { get; init; }

    /// <summary>Its sensor is silent: the alarm stands, but nobody can say whether the condition still holds.</summary>
    public bool IsUnverified { get; init; }
}

public enum AlarmChange { Raised, Acknowledged, Cleared }

/// <summary>Something that happened to an occurrence, already written in this transaction.</summary>
public sealed record AlarmTransition(AlarmOccurrence Occurrence, AlarmChange Change, Instant At, string? Who);

/// <summary>Reacts to alarm transitions inside the transaction that stores them: how a message gets into the outbox with its cause.</summary>
public interface ITransitionStage
{
    void React(IReadOnlyList<AlarmTransition> transitions, WriteScope scope);
}

/// <summary>What others may ask of the alarms.</summary>
public interface IAlarmDesk
{
    /// <summary>Occurrences that are not normal, most urgent first.</summary>
    IReadOnlyList<AlarmOccurrence> Current { get; }

    /// <summary>Somebody has it. Doing it twice changes nothing.</summary>
    /// <returns>The occurrence afterwards; null where there is none of that id.</returns>
    Task<AlarmOccurrence?> Acknowledge(string occurrenceId, string who, CancellationToken stop);

    /// <summary>Inside a transaction already begun, e.g. with a used link.</summary>
    AlarmOccurrence? Acknowledge(string occurrenceId, string who, WriteScope scope);

    /// <summary>Any occurrence, ended ones too.</summary>
    AlarmOccurrence? Find(string occurrenceId);

    IReadOnlyList<AlarmOccurrence> History(Instant from, Instant to);
}
