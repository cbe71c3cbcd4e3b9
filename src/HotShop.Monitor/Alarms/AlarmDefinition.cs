using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>One alarm of this studio: what is watched and when it rings.</summary>
internal sealed record AlarmDefinition
{
    /// <summary>Appliance, kind and channel or part, e.g. <c>furnace-1.overheat.crown</c>.</summary>
    public string Id => Channel is null ? $"{Appliance}.{Kind}" : $"{Appliance}.{Kind}.{Channel}";

    /// <summary>Appliance id; <c>service</c> for the service itself.</summary>
    public required string Appliance { get; init; }

    public required string ApplianceName { get; init; }
    public ApplianceKind? ApplianceKind { get; init; }
    public required string Kind { get; init; }

    /// <summary>Channel within the appliance, or part of the service; null where the alarm looks at several.</summary>
    public string? Channel { get; init; }

    /// <summary>1 wakes people at once, 2 calls, 3 waits for the morning.</summary>
    public required int Priority { get; init; }

    /// <summary>In <see cref="Unit"/>; null for alarms on a state.</summary>
    public double? Limit { get; init; }

    /// <summary>How far inside the limit the value must come before it counts as good again.</summary>
    public double Deadband { get; init; }

    /// <summary>How long the condition must hold, in the channel's own time, before the alarm is raised.</summary>
    public Duration OnDelay { get; init; }

    /// <summary>How long it must be good again before the alarm clears.</summary>
    public Duration OffDelay { get; init; }

    /// <summary>UCUM unit of value and limit.</summary>
    public string? Unit { get; init; }

    /// <summary>Ids of alarms that are the cause of this one: while one of them stands, this one calls nobody.</summary>
    public IReadOnlyList<string> Causes { get; init; } = [];
}
