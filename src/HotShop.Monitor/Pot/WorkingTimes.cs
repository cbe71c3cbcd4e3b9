using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>When people worked at a pot, by the modes somebody set (or the timetable).</summary>
static class WorkingTimes
{
    /// <summary>Appliances whose working mode speaks for a pot: its furnace, and the glory holes where there is only one pot that they could be fed from.</summary>
    public static IEnumerable<string> Witnesses(StudioPlan plan, string furnace) => plan.Appliances
        .Where(a => a.Id == furnace || (a.Kind == ApplianceKind.GloryHole && plan.Appliances.Count(o => o.Options.Pot is not null) == 1)).Select(a => a.Id);

    /// <param name="logs">For each witness its entries in force, in order. Only a mode that was logged counts: one that only the configuration says was set by nobody.</param>
    /// <returns>In order, apart from each other; the last may be open.</returns>
    public static IReadOnlyList<Interval> Of(IEnumerable<IReadOnlyList<LogEntry>> logs)
    {
        var spans = new List<Interval>();
        foreach (var log in logs)
        {
            Instant? since = null;
            foreach (var entry in log.Where(e => e.Entry == "mode"))
            {
                var isWorking = ModeNames.Parse(entry.Fields["mode"]?.GetValue<string>()) == Mode.Working;
                if (!isWorking && since is { } start) spans.Add(new(start, entry.At));
                since = isWorking ? since ?? entry.At : null;
            }
            if (since is { } open) spans.Add(new(open, Instant.MaxValue));
        }
        return Joined(spans);
    }

    static List<Interval> Joined(List<Interval> spans)
    {
        var joined = new List<Interval>();
        foreach (var span in spans.OrderBy(s => s.Start))
            if (joined.Count > 0 && span.Start <= joined[^1].End) joined[^1] = new(joined[^1].Start, Instant.Max(joined[^1].End, span.End));
            else joined.Add(span);
        return joined;
    }
}
