using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <param name="Celsius">Mean of that minute.</param>
sealed record Extreme(Instant At, double Celsius);

/// <summary>A stretch without a reading.</summary>
sealed record Gap(Instant From, Instant To);

/// <summary>A point of the strip: temperature, and how hard the fire was fed, 0 to 1 of the night's most.</summary>
sealed record CoursePoint(Instant At, double Celsius, double? Feed);

/// <summary>What an appliance did in a night.</summary>
/// <param name="Low">Null, with <paramref name="High"/>, where nothing was measured.</param>
/// <param name="Mode">At the end of the night.</param>
/// <param name="ModeSince">When it was set, if within the night.</param>
/// <param name="Kept">Null where neither a curve nor a set point asked for anything.</param>
sealed record ApplianceNight(
    string Appliance, string Name, ApplianceKind Kind, Extreme? Low, Extreme? High, Extreme? Last, IReadOnlyList<Gap> Gaps, Kept? Kept, Mode Mode, Instant? ModeSince,
    IReadOnlyList<CoursePoint> Course, Duration CourseGap);

/// <summary>Looks at each appliance's night.</summary>
sealed class ApplianceNights(StudioPlan plan, IReadingHistory history, IAnnealingCurves curves, ModeHistory modes)
{
    /// <summary>Points of the strip: one every so many minutes.</summary>
    const int MinutesAPoint = 5;

    /// <summary>A gap shorter than this is a lost message, not worth a word.</summary>
    static readonly Duration shortestGap = Duration.FromMinutes(3);

    static readonly Duration minute = Duration.FromMinutes(1);

    public IReadOnlyList<ApplianceNight> All(Night night) =>
        [.. plan.Appliances.Where(a => a.Kind != ApplianceKind.Shop).OrderBy(a => a.Options.Position).Select(a => Of(a, night)).OfType<ApplianceNight>()];

    ApplianceNight? Of(AppliancePlan appliance, Night night)
    {
        if (AlarmDefinitions.HotTemperature(appliance) is not { } hot) return null;
        var minutes = history.MinutesAsOf(hot, night.From, night.To);
        var stretch = modes.Of(appliance.Id, night.From, night.To) is { Count: > 0 } list ? list[^1] : null;
        var (low, high) = (minutes.MinBy(m => m.Mean), minutes.MaxBy(m => m.Mean));
        return new(appliance.Id, appliance.Name, appliance.Kind, Point(low), Point(high), Point(minutes.Count > 0 ? minutes[^1] : null), Gaps(minutes, hot, night), Keeps(appliance, minutes, night),
            stretch?.Mode ?? Mode.Holding, stretch is not null && stretch.From > night.From ? stretch.From : null,
            Course(appliance, minutes, night), Duration.Max(hot.LongestGap, minute * (MinutesAPoint * 2)));
    }

    static Extreme? Point(MinuteRow? row) => row is null ? null : new(row.Minute, row.Mean);

    Kept? Keeps(AppliancePlan appliance, IReadOnlyList<MinuteRow> minutes, Night night)
    {
        if (curves.For(appliance.Id, night.To) is { } curve) return Keeping.ToCurve(minutes, curve);
        if (appliance.Channel(Quantity.Setpoint) is not { } setpoint) return null;
        return Keeping.ToSetpoint(minutes, history.MinutesAsOf(setpoint, night.From - Duration.FromHours(1), night.To), setpoint.LongestGap);
    }

    static List<Gap> Gaps(IReadOnlyList<MinuteRow> minutes, ChannelPlan channel, Night night)
    {
        var longest = Duration.Max(channel.LongestGap, shortestGap);
        var gaps = new List<Gap>();
        var since = night.From;
        foreach (var row in minutes)
        {
            if (row.Minute - since > longest) gaps.Add(new(since, row.Minute));
            since = row.Minute + minute;
        }
        if (night.To - since > longest + minute) gaps.Add(new(since, night.To));
        return gaps;
    }

    List<CoursePoint> Course(AppliancePlan appliance, IReadOnlyList<MinuteRow> minutes, Night night)
    {
        var feed = (appliance.Channel(Quantity.GasFlow) ?? appliance.Channel(Quantity.Power) ?? appliance.Channel(Quantity.Relay)) is { } channel
            ? history.MinutesAsOf(channel, night.From, night.To).GroupBy(m => Slot(m.Minute)).ToDictionary(slot => slot.Key, slot => slot.Average(m => m.Mean)) : [];
        var most = feed.Count > 0 ? feed.Values.Max() : 0;
        return [.. minutes.GroupBy(m => Slot(m.Minute)).Select(slot => new CoursePoint(slot.First().Minute, slot.Average(m => m.Mean),
            most > 0 && feed.TryGetValue(slot.Key, out var fed) ? Math.Clamp(fed / most, 0, 1) : null))];
    }

    static long Slot(Instant at) => at.ToUnixTimeSeconds() / (60 * MinutesAPoint);
}
