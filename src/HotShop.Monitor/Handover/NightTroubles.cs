using HotShop.Monitor.Alarms;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Notifications;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>A trouble of the night: an alarm that called, or would have waited for the morning.</summary>
/// <param name="Called">Names of those who were called.</param>
/// <param name="Rounds">How many times messages went out.</param>
/// <param name="Cause">The entry of the log that says why; null while nobody wrote one.</param>
sealed record NightTrouble(AlarmOccurrence Occurrence, IReadOnlyList<string> Called, int Rounds, LogEntry? Cause)
{
    public bool HasEnded => Occurrence.ClearedAt is not null;

    /// <summary>It called somebody, or stands for what did.</summary>
    public bool IsUrgent => Occurrence is { Priority: < 3, InhibitedBy: null };

    /// <summary>It has ended and nobody wrote down why.</summary>
    public bool WantsCause => IsUrgent && HasEnded && Cause is null;
}

/// <summary>Puts together what rang in a night, who took it, and whether its cause is written down.</summary>
sealed class NightTroubles(IAlarmDesk alarms, CallReport calls, LogbookBook logbook)
{
    /// <summary>Field of a note that names the occurrence it explains.</summary>
    public const string CauseField = "occurrence";

    /// <summary>A repair so long after the end of a trouble at the same appliance is taken for its cause.</summary>
    static readonly Duration repairWithin = Duration.FromHours(24);

    /// <summary>Alarms that began or held in the night, the oldest first.</summary>
    public IReadOnlyList<NightTrouble> Of(Night night)
    {
        var held = alarms.History(night.From, night.To).Where(o => o.Since < night.To && (o.ClearedAt is not { } cleared || cleared > night.From)).OrderBy(o => o.Since).ToList();
        if (held.Count == 0) return [];
        var notes = logbook.InForce(["note", "repair"], held[0].Since, night.To + Duration.FromDays(14));
        return [.. held.Select(o => Of(o, notes))];
    }

    NightTrouble Of(AlarmOccurrence occurrence, IReadOnlyList<LogEntry> notes)
    {
        var tally = calls.Of(occurrence.Id);
        return new(occurrence, tally.Called, tally.Rounds, notes.LastOrDefault(n => IsCauseOf(n, occurrence)));
    }

    static bool IsCauseOf(LogEntry note, AlarmOccurrence occurrence)
    {
        if (note.Fields[CauseField] is { } named) return named.GetValueKind() == System.Text.Json.JsonValueKind.String && named.GetValue<string>() == occurrence.Id;
        return note.Entry == "repair" && note.Appliance == occurrence.Appliance && note.At >= occurrence.Since && note.At <= (occurrence.ClearedAt ?? Instant.MaxValue - repairWithin) + repairWithin;
    }
}
