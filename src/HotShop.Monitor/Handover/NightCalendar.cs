using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Handover;

/// <summary>When a night begins and ends, what kind of night it is, and when the handover is due.</summary>
sealed class NightCalendar(StudioPlan plan, ModeHistory modes)
{
    /// <summary>Shorter work is somebody lighting a glory hole to look at it. A choice.</summary>
    static readonly Duration WorthAWorkingDay = Duration.FromHours(2);

    /// <summary>Weeks looked back for what a weekday usually is.</summary>
    const int HabitWeeks = 4;

    static readonly LocalTime noon = new(12, 0), latestEndOfWork = new(5, 0);
    static readonly LocalTimePattern clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    readonly LocalTime hour = clock.Parse(plan.Configuration.Handover.Hour).Value;
    readonly LocalTime evening = clock.Parse(plan.Configuration.Handover.Evening).Value;
    readonly IReadOnlySet<IsoDayOfWeek> days = Weekdays.Parse(plan.Configuration.Handover.Days)!;

    /// <summary>Whose working mode says that people are at work: the glory holes, or the furnaces where there is none.</summary>
    readonly List<string> witnesses = plan.Appliances.Any(a => a.Kind == ApplianceKind.GloryHole)
        ? [.. plan.Appliances.Where(a => a.Kind == ApplianceKind.GloryHole).Select(a => a.Id)]
        : [.. plan.Appliances.Where(a => a.Kind == ApplianceKind.Furnace).Select(a => a.Id)];

    /// <summary>The night that the morning of a moment looks back on.</summary>
    public Night Of(Instant at) => Of(at.InZone(plan.Zone).Date, at);

    public Night Of(LocalDate morning, Instant now)
    {
        var to = Instant.Min(now, At(morning, noon));
        var logged = EndOfWork(At(morning.PlusDays(-1), noon), Instant.Min(now, At(morning, latestEndOfWork)));
        var from = Instant.Min(logged ?? At(morning.PlusDays(-1), evening), to);
        var (gasFrom, gasTo) = (NextHour(from), LastHour(Instant.Min(to, At(morning, hour))));
        return new(morning, from, to, logged is not null, gasFrom, Instant.Max(gasFrom, gasTo), KindBefore(morning, now));
    }

    /// <summary>An earlier night, cut to the same times of day as another: what gas is compared with.</summary>
    public (Instant From, Instant To) SameHours(Night night, LocalDate morning)
    {
        var back = Period.Between(morning, night.Morning, PeriodUnits.Days).Days;
        return (Shifted(night.GasFrom, back), Shifted(night.GasTo, back));
    }

    /// <summary>Whether people worked on a day that is over, or are expected to on one that is not.</summary>
    public NightKind KindBefore(LocalDate day, Instant now)
    {
        var end = plan.Zone.AtStartOfDay(day.PlusDays(1)).ToInstant();
        if (Worked(day, Instant.Min(end, now))) return NightKind.BeforeWork;
        if (end <= now) return NightKind.BeforeRest;
        if (FromTimetable(day) is { } planned) return planned;
        // What no timetable says, the habit of the weekday does, once the log knows of work at all.
        var before = Enumerable.Range(1, HabitWeeks * 7).Select(back => day.PlusDays(-back)).Where(d => Worked(d, now)).ToList();
        var weeks = before.Count == 0 ? 0 : Math.Min(HabitWeeks, Period.Between(before.Min(), day, PeriodUnits.Days).Days / 7);
        if (weeks == 0) return NightKind.NotKnown;
        return before.Count(d => d.DayOfWeek == day.DayOfWeek) * 2 >= weeks ? NightKind.BeforeWork : NightKind.BeforeRest;
    }

    /// <summary>The last moment a handover was due to be mailed, and its day; null where the days name none. A time that the clock skips in spring is taken
    /// after the skip, one that it shows twice in autumn the first time.</summary>
    public (LocalDate Day, Instant At)? LastDue(Instant now)
    {
        for (var day = now.InZone(plan.Zone).Date; ; day = day.PlusDays(-1))
        {
            if (days.Contains(day.DayOfWeek) && At(day, hour) <= now) return (day, At(day, hour));
            if (day < now.InZone(plan.Zone).Date.PlusDays(-7)) return null;
        }
    }

    /// <summary>The hour of the handover on a day.</summary>
    public Instant DueOn(LocalDate day) => At(day, hour);

    Instant At(LocalDate day, LocalTime time) => day.At(time).InZoneLeniently(plan.Zone).ToInstant();

    Instant? EndOfWork(Instant from, Instant to)
    {
        if (to <= from) return null;
        Instant? last = null;
        foreach (var stretch in witnesses.SelectMany(w => modes.Of(w, from, to)).Where(s => s.Mode == Mode.Working && s.To < to))
            if (last is null || stretch.To > last) last = stretch.To;
        return last;
    }

    bool Worked(LocalDate day, Instant until)
    {
        var from = plan.Zone.AtStartOfDay(day).ToInstant();
        var to = Instant.Min(until, plan.Zone.AtStartOfDay(day.PlusDays(1)).ToInstant());
        return to > from && witnesses.Any(w => modes.Of(w, from, to).Where(s => s.Mode == Mode.Working).Aggregate(Duration.Zero, (sum, s) => sum + (s.To - s.From)) >= WorthAWorkingDay);
    }

    NightKind? FromTimetable(LocalDate day)
    {
        var lines = plan.Appliances.Where(a => witnesses.Contains(a.Id)).SelectMany(a => a.Options.Timetable).Where(t => t.Mode == Mode.Working.NameOf()).ToList();
        if (lines.Count == 0) return null;
        return lines.Any(t => Weekdays.Parse(t.Days)!.Contains(day.DayOfWeek)) ? NightKind.BeforeWork : NightKind.BeforeRest;
    }

    Instant Shifted(Instant at, int daysBack)
    {
        var local = at.InZone(plan.Zone).LocalDateTime;
        return local.PlusDays(-daysBack).InZoneLeniently(plan.Zone).ToInstant();
    }

    static Instant NextHour(Instant at) => LastHour(at + Duration.FromHours(1) - Duration.FromTicks(1));

    static Instant LastHour(Instant at) => Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds() / 3600 * 3600);
}
