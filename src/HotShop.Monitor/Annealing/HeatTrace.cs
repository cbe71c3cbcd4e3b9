using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>Whether an annealer is still heated, from whatever tells: its set point, its power, its relay.</summary>
/// <param name="OffSince">When the heat went off; null where nothing tells.</param>
/// <param name="IsHeldBySetpoint">Its controller still asks for a temperature well above a warm room.</param>
/// <param name="IsSetpointFalling">And that temperature came down during the last hour.</param>
sealed record HeatTrace(Instant? OffSince, bool IsHeldBySetpoint, bool IsSetpointFalling)
{
    /// <summary>A controller that is switched on but has nothing to do shows a set point near the room's temperature. Common practice.</summary>
    const double IdleSetpointCelsius = 40;

    /// <summary>Less is the controller's own draw. Common practice.</summary>
    const double IdleKilowatts = 0.1;

    public static HeatTrace Of(AppliancePlan annealer, IReadingHistory history, Instant from, Instant now)
    {
        var asked = annealer.Channel(Quantity.Setpoint) is { } setpoint ? history.MinutesAsOf(setpoint, from, now).Where(m => m.Mean > IdleSetpointCelsius).ToList() : null;
        if (asked is { Count: > 0 } && now - asked[^1].Minute <= Quiet(annealer.Channel(Quantity.Setpoint)!))
        {
            var anHourAgo = asked.FirstOrDefault(m => m.Minute >= now - Duration.FromHours(1)) ?? asked[^1];
            return new(null, true, anHourAgo.Mean - asked[^1].Mean > 0.5);
        }
        Instant? off = asked is { Count: > 0 } ? asked[^1].Minute + Duration.FromMinutes(1) : null;
        if (Fed(annealer, history, from, now) is { } fed) off = off is null ? fed : Instant.Max(off.Value, fed);
        return new(off, false, false);
    }

    /// <summary>End of the last minute in which the element drew power.</summary>
    static Instant? Fed(AppliancePlan annealer, IReadingHistory history, Instant from, Instant now)
    {
        var (channel, least) = annealer.Channel(Quantity.Power) is { } power ? (power, IdleKilowatts) : (annealer.Channel(Quantity.Relay), 0.5);
        if (channel is null) return null;
        var minutes = history.MinutesAsOf(channel, from, now);
        for (var i = minutes.Count - 1; i >= 0; i--)
        {
            if (minutes[i].Max <= least) continue;
            // A device that tells only changes is on until it says otherwise.
            return i + 1 < minutes.Count ? minutes[i + 1].Minute : channel.OnChangeOnly ? now : minutes[i].Minute + Duration.FromMinutes(1);
        }
        return null;
    }

    static Duration Quiet(ChannelPlan channel) => Duration.Max(channel.OnChangeOnly ? Duration.FromHours(26) : channel.LongestGap, Duration.FromMinutes(5));
}
