using System.Collections.Immutable;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>The last that is known of a channel from live readings.</summary>
/// <param name="At">Time of the last usable reading, by the device.</param>
/// <param name="GoodArrival">When it arrived.</param>
/// <param name="HeardArrival">When anything live arrived, usable or not.</param>
/// <param name="Unusable">The last value, where it was implausible.</param>
internal sealed record ChannelMemory(Instant? At = null, double Value = 0, Instant? GoodArrival = null, Instant? HeardArrival = null, double? Unusable = null)
{
    public static readonly ChannelMemory Nothing = new();
}

/// <summary>A temperature with the gas that flowed then; one a minute.</summary>
internal sealed record TrendPoint(Instant At, double Celsius, double? CubicMetresPerHour);

/// <summary>What a rule must remember beyond its timing.</summary>
/// <param name="HasReached">An annealer has been at its setpoint since that last rose.</param>
/// <param name="SetpointMark">The setpoint when it last moved noticeably, °C.</param>
/// <param name="Trend">The last half hour of an appliance without flame sensor.</param>
/// <param name="UsualCubicMetresPerHour">The gas it has taken over the last half day, later counting more.</param>
internal sealed record RuleMemory(
    bool HasReached = false, double? SetpointMark = null, ImmutableList<TrendPoint>? Trend = null, double? UsualCubicMetresPerHour = null)
{
    public static readonly RuleMemory Nothing = new();
}

/// <summary>One alarm's working memory. <see cref="Occurrence"/> is the last one raised, ended or not.</summary>
/// <param name="NotBefore">A child released from its cause starts afresh here.</param>
internal sealed record AlarmMemory(AlarmState State, Timing Timing, RuleMemory Rule, AlarmOccurrence? Occurrence = null, Instant? NotBefore = null)
{
    public static readonly AlarmMemory Quiet = new(AlarmState.Normal, Timing.Quiet, RuleMemory.Nothing);
}

/// <summary>Everything the alarms remember. Never changed in place: going back is keeping the older one.</summary>
/// <param name="StartedAt">Since when the service has listened without a break.</param>
internal sealed record StudioMemory(
    Instant StartedAt,
    ImmutableArray<ChannelMemory> Channels,
    ImmutableArray<AlarmMemory> Alarms,
    ImmutableDictionary<string, ModeInForce> Modes,
    ImmutableDictionary<string, PartHealth> Parts,
    ImmutableDictionary<string, AnnealingCurve> Curves,
    Instant? LastTick = null);
