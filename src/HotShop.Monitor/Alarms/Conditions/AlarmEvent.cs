using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>Something the alarms hear of.</summary>
internal abstract record AlarmEvent
{
    /// <summary>A live reading in the canonical unit. Late ones never get here: they cannot ring.</summary>
    public sealed record Sample(string Channel, Instant At, double Value, bool IsPlausible, Instant ArrivedAt) : AlarmEvent;

    /// <summary>The service's clock: about once a second.</summary>
    public sealed record Tick(Instant Now) : AlarmEvent;

    public sealed record ModeSet(string Appliance, ModeInForce Mode, Instant Now) : AlarmEvent;

    /// <summary>The typed curve that an annealer is on; null: none.</summary>
    public sealed record CurveSet(string Appliance, AnnealingCurve? Curve) : AlarmEvent;

    public sealed record PartReported(PartHealth Part) : AlarmEvent;

    /// <summary>Somebody has it.</summary>
    public sealed record Acknowledged(string OccurrenceId, string Who, Instant At) : AlarmEvent;
}
