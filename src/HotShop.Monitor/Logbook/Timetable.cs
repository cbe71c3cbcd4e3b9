using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;

namespace HotShop.Monitor.Logbook;

/// <summary>The changes of mode that a timetable asks for. Pure; days and times are the studio's.</summary>
public sealed class Timetable(IReadOnlyList<TimetableEntry> entries, DateTimeZone zone)
{
    static readonly LocalTimePattern Pattern = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    static readonly ZoneLocalMappingResolver FirstAndRightAfter = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    readonly List<(IReadOnlySet<IsoDayOfWeek> Days, LocalTime At, Mode Mode)> lines =
        [.. entries.Select(e => (Weekdays.Parse(e.Days)!, Pattern.Parse(e.At).Value, ModeNames.Parse(e.Mode)!.Value))];

    /// <summary>
    /// Changes due in (after, upTo], in order. A time that the clock skips in spring is taken right after the skip;
    /// one that it shows twice in autumn is taken the first time.
    /// </summary>
    public IReadOnlyList<(Instant At, Mode Mode)> Due(Instant after, Instant upTo)
    {
        if (lines.Count == 0 || upTo <= after) return [];
        var due = new List<(Instant At, Mode Mode)>();
        var last = upTo.InZone(zone).Date;
        for (var day = after.InZone(zone).Date; day <= last; day = day.PlusDays(1))
            foreach (var (days, time, mode) in lines)
            {
                if (!days.Contains(day.DayOfWeek)) continue;
                var at = day.At(time).InZone(zone, FirstAndRightAfter).ToInstant();
                if (at > after && at <= upTo) due.Add((at, mode));
            }
        return [.. due.OrderBy(d => d.At)];
    }
}
