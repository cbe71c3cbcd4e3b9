using System.Text.Json.Nodes;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>A button or pedal that knows nothing of logbooks: a press on its topic is one entry.</summary>
public sealed record ButtonPlan
{
    public required string Id { get; init; }

    /// <summary>Appliance the entry belongs to.</summary>
    public required string Appliance { get; init; }

    /// <summary>Topic the button publishes on.</summary>
    public required string Topic { get; init; }

    /// <summary>Kind of entry that a press makes.</summary>
    public required string Entry { get; init; }

    /// <summary>Its fields, checked; copied for each press.</summary>
    public required JsonObject Fields { get; init; }

    public string? Who { get; init; }

    /// <summary>JSON Pointer (RFC 6901) to what was done, and to its time, in a payload that is an object.</summary>
    public string? ValuePointer { get; init; }
    public string? TimePointer { get; init; }

    /// <summary>Values that mean a press; empty: all but those that say it was let go.</summary>
    public IReadOnlyList<string> Pressed { get; init; } = [];

    /// <summary>Presses closer together than this are one: contacts bounce.</summary>
    public Duration Settle { get; init; } = Duration.FromSeconds(1);
}
