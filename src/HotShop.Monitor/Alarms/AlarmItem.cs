using HotShop.Monitor.Alarms.Words;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>An occurrence as callers and pages see it.</summary>
/// <param name="Id">The alarm; the same each time it rings.</param>
/// <param name="Occurrence">This one time: what acting names.</param>
/// <param name="Name">The kind in words.</param>
/// <param name="State">unacknowledged, acknowledged, returned-unacknowledged or normal.</param>
/// <param name="Unit">UCUM, of value and limit.</param>
/// <param name="IsUnverified">Its sensor is silent: nobody can say whether it still holds.</param>
/// <param name="InhibitedBy">The alarm that is its cause; this one calls nobody.</param>
sealed record AlarmItem(
    string Id, string Occurrence, string Appliance, string? Channel, string Kind, string Name, int Priority, string State, string Sentence, Instant Since,
    double? Value, double? Limit, string? Unit, string Consequence, string FirstStep, string Caution, string? Who, Instant? AcknowledgedAt, Instant? ClearedAt,
    bool IsUnverified, string? InhibitedBy)
{
    public static AlarmItem Of(AlarmOccurrence o) => new(o.AlarmId, o.Id, o.Appliance, o.Channel, o.Kind, Wording.NameOf(o.Kind), o.Priority, o.State.NameOf(),
        o.Words.Sentence, o.Since, o.Value, o.Limit, o.Unit, o.Words.Consequence, o.Words.FirstStep, o.Words.Caution, o.AcknowledgedBy, o.AcknowledgedAt, o.ClearedAt,
        o.IsUnverified, o.InhibitedBy);
}
