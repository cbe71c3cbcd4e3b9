using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>A couple with the hours it was hot since it was new, was calibrated or was repaired.</summary>
/// <param name="HoursHot">Above <see cref="WornParts.HotCelsius"/>.</param>
/// <param name="Since">Of the log's calibration or repair that names it, or of the configuration's calibration, whichever is later; else of its first reading.</param>
/// <param name="IsReset">One of them says since when.</param>
/// <param name="UncorrectedSince">The log's calibration, where the configuration's corrections are older than it.</param>
sealed record CoupleWear(string Appliance, string ApplianceName, string Channel, double HoursHot, Instant Since, bool IsReset, Instant? UncorrectedSince);

/// <param name="ChangedAt">Null where the log knows of no change.</param>
sealed record PotAge(string Appliance, string ApplianceName, Instant? ChangedAt);

/// <summary>Something that is due again.</summary>
/// <param name="DoneAt">When the log last says it was done; null where it never does.</param>
/// <param name="Left">Days or hours until it is due; below 0 when overdue.</param>
/// <param name="IsInHours">Of the appliance's hot hours; else of days.</param>
sealed record DueItem(string Name, string? Appliance, string? ApplianceName, Instant? DoneAt, double Left, double Every, bool IsInHours)
{
    public bool IsDue => Left <= 0;
}

/// <param name="LastCalibrationAt">Of any appliance; null where neither log nor configuration knows of one.</param>
sealed record Worn(IReadOnlyList<CoupleWear> Couples, IReadOnlyList<PotAge> Pots, IReadOnlyList<DueItem> Items, Instant? LastCalibrationAt);

/// <summary>What is worn and what is due, from readings and the log.</summary>
sealed class WornParts(StudioPlan plan, IReadingHistory history, LogbookBook logbook)
{
    /// <summary>Noble-metal couples and type K drift above this: hours there are what wears them (common practice). °C.</summary>
    public const double HotCelsius = 1000;

    /// <summary>What counts as running for an annealer or oven, °C.</summary>
    const double WarmCelsius = 400;

    /// <summary>Hour rows are kept for ever; more than this of them is asked of no channel.</summary>
    static readonly Duration furthest = Duration.FromDays(3660);

    static readonly string[] doneBy = ["repair", "note", "calibration"];

    public Worn At(Instant now)
    {
        var log = logbook.InForce([.. doneBy, "pot-changed"], now - furthest, now);
        var couples = plan.Appliances.Where(a => a.Kind is ApplianceKind.Furnace or ApplianceKind.GloryHole).SelectMany(a => Couples(a).Select(c => Wear(a, c, log, now))).OfType<(CoupleWear Wear, Instant First)>().ToList();
        // What was never logged as done counts from the first hour that is known.
        var began = couples.Count > 0 ? couples.Min(c => c.First) : now;
        return new(
            [.. couples.Select(c => c.Wear)],
            [.. plan.Appliances.Where(a => a.Options.Pot is not null).Select(a => new PotAge(a.Id, a.Name, log.LastOrDefault(e => e.Entry == "pot-changed" && e.Appliance == a.Id)?.At))],
            [.. plan.Configuration.Upkeep.Select(u => Due(u, log, began, now)).OrderBy(d => d.Left / d.Every)],
            Later(log.LastOrDefault(e => e.Entry == "calibration")?.At, plan.Appliances.SelectMany(a => a.Channels).Max(c => c.Calibrations.At(now)?.From)));
    }

    static IEnumerable<ChannelPlan> Couples(AppliancePlan appliance)
    {
        var terminals = appliance.Channels.Select(c => c.ColdJunction).ToHashSet();
        return appliance.Channels.Where(c => c.Quantity == Quantity.Temperature && !terminals.Contains(c.Id));
    }

    (CoupleWear Wear, Instant First)? Wear(AppliancePlan appliance, ChannelPlan channel, IReadOnlyList<LogEntry> log, Instant now)
    {
        var named = log.Where(e => e.Appliance == appliance.Id && Names(e, channel.Name, "channel")).ToList();
        var corrected = channel.Calibrations.At(now)?.From;
        var reset = Later(named.LastOrDefault(e => e.Entry is "calibration" or "repair")?.At, corrected);
        // A correction holds from the beginning of its day; the comparison was made some time within it.
        var compared = named.LastOrDefault(e => e.Entry == "calibration")?.At;
        var uncorrected = compared >= corrected + Duration.FromDays(1) ? compared : null;
        var hours = history.Hours(channel, HourOf(reset ?? now - furthest), now);
        if (hours.Count == 0) return null;
        var since = reset ?? hours[0].Hour;
        var hot = HotHours.Above(hours, hour => history.Minutes(channel, Instant.Max(hour, since), hour + Duration.FromHours(1)), HotCelsius);
        return (new(appliance.Id, appliance.Name, channel.Name, hot, since, reset is not null, uncorrected), hours[0].Hour);
    }

    DueItem Due(UpkeepOptions item, IReadOnlyList<LogEntry> log, Instant began, Instant now)
    {
        var done = log.LastOrDefault(e => doneBy.Contains(e.Entry) && (item.Appliance is null || e.Appliance == item.Appliance) && Names(e, item.Name, "upkeep"))?.At;
        var appliance = item.Appliance is { } id ? plan.Appliance(id) : null;
        if (item.EveryHours is not { } every) return new(item.Name, item.Appliance, appliance?.Name, done, (item.EveryDays ?? 0) - (now - (done ?? began)).TotalDays, item.EveryDays ?? 1, false);
        return new(item.Name, item.Appliance, appliance?.Name, done, every - RunningHours(appliance!, done, now), every, true);
    }

    double RunningHours(AppliancePlan appliance, Instant? since, Instant now)
    {
        if (Couples(appliance).FirstOrDefault() is not { } channel) return 0;
        var limit = appliance.Kind is ApplianceKind.Furnace or ApplianceKind.GloryHole ? HotCelsius : WarmCelsius;
        return HotHours.Above(history.Hours(channel, HourOf(since ?? now - furthest), now), hour => history.Minutes(channel, Instant.Max(hour, since ?? hour), hour + Duration.FromHours(1)), limit);
    }

    static Instant? Later(Instant? one, Instant? other) => one is null || other > one ? other : one;

    static Instant HourOf(Instant at) => Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds() / 3600 * 3600);

    /// <summary>An entry names a thing in a field of its own, or in its words.</summary>
    static bool Names(LogEntry entry, string name, string field)
    {
        if (Text(entry, field) is { } own) return string.Equals(own, name, StringComparison.OrdinalIgnoreCase);
        return Text(entry, "text") is { } words && words.Replace('-', ' ').Contains(name.Replace('-', ' '), StringComparison.OrdinalIgnoreCase);
    }

    static string? Text(LogEntry entry, string field) =>
        entry.Fields[field] is { } node && node.GetValueKind() == System.Text.Json.JsonValueKind.String ? node.GetValue<string>() : null;
}
