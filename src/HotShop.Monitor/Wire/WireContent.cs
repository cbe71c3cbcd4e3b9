using System.Text.Json.Nodes;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>One value out of a payload, converted to the canonical unit of its channel's quantity.</summary>
/// <param name="Channel">The configured channel.</param>
/// <param name="Value">Finite, in <paramref name="Unit"/>.</param>
/// <param name="Unit">UCUM: the quantity's canonical unit, or mV for a thermocouple's voltage.</param>
/// <param name="At">Time the device gave, if it gave one.</param>
public sealed record WireReading(ChannelPlan Channel, double Value, string Unit, Instant? At);

/// <summary>A log entry as sent: checked for its form, not yet against the pot or the appliance.</summary>
public sealed record WireLogEntry(string Appliance, string Entry, string? Id, string? Who, Instant? At, JsonObject Fields)
{
    /// <summary>How it is known again where it came by MQTT and has no id.</summary>
    public EntryDelivery? Delivery { get; init; }
}

/// <summary>Something in a message that became no value, and why.</summary>
/// <param name="Reason">What came, what was expected, what to send instead; with the row's index for arrays.</param>
public sealed record Refusal(string Reason, int? Index = null);

/// <summary>All that one message says. Nothing in it is lost: a row is a reading, a log entry or a refusal.</summary>
public sealed record WireContent(IReadOnlyList<WireReading> Readings, WireLogEntry? Entry, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>Nobody listens to the topic, or its channels take single values out of it: somebody may want to add one.</summary>
    public bool MayHoldMore { get; init; }

    public static WireContent Refused(string reason) => new([], null, [new Refusal(reason)]);
}
