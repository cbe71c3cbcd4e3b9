using System.Text.Json.Nodes;
using HotShop.Monitor.Logbook;
using HotShop.Physics.Pot;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>Sorts a pot's log by the studio's days. Pure.</summary>
static class PotDays
{
    /// <param name="entries">In force, in order of time.</param>
    /// <param name="working">When a working mode was set, in order and apart from each other; an open one ends at <paramref name="at"/>.</param>
    /// <param name="at">Nothing later is looked at.</param>
    public static IReadOnlyList<PotDay> Of(IEnumerable<LogEntry> entries, PotPlan pot, IReadOnlyList<Interval> working, DateTimeZone zone, Instant at)
    {
        var days = new SortedDictionary<LocalDate, Tally>();
        foreach (var span in working.Where(s => s.Start < at)) Split(span.Start, Instant.Min(span.End, at), isOpen: span.End > at, zone, days);
        var known = entries.Where(e => e.At <= at && e.Entry is "gather" or "tally").ToList();
        var tallies = new List<PotEvent.Tally>();
        foreach (var entry in known)
            if (PotLog.TallyOf(entry, pot) is { } tally)
            {
                tallies.Add(tally);
                Count(entry.Id, tally, zone, days);
            }
        foreach (var entry in known.Where(e => e.Entry == "gather" && e.At <= at))
            Count(entry, PotLog.GatherOf(entry, pot), tallies, zone, days);
        return [.. days.Select(d => d.Value.Day(d.Key))];
    }

    static void Split(Instant from, Instant to, bool isOpen, DateTimeZone zone, SortedDictionary<LocalDate, Tally> days)
    {
        while (from < to)
        {
            var date = from.InZone(zone).Date;
            var midnight = date.PlusDays(1).AtStartOfDayInZone(zone).ToInstant();
            var end = Instant.Min(to, midnight);
            At(days, date).Work(from, end, isOpen && end == to && end < midnight);
            from = end;
        }
    }

    static void Count(string id, PotEvent.Tally tally, DateTimeZone zone, SortedDictionary<LocalDate, Tally> days)
    {
        var middle = (tally.From + (tally.To - tally.From) / 2).InZone(zone).Date;
        At(days, middle).Add(id, tally);
        // A week's tally speaks for each worked day in it.
        foreach (var day in days.Values) day.MarkIfCovered(tally);
    }

    static void Count(LogEntry entry, PotEvent gather, List<PotEvent.Tally> tallies, DateTimeZone zone, SortedDictionary<LocalDate, Tally> days)
    {
        var isReplaced = gather is PotEvent.Gather && tallies.Exists(t => entry.At >= t.From && entry.At <= t.To);
        if (!isReplaced) At(days, entry.At.InZone(zone).Date).Add(gather);
    }

    static Tally At(SortedDictionary<LocalDate, Tally> days, LocalDate date)
    {
        if (!days.TryGetValue(date, out var day)) days[date] = day = new Tally();
        return day;
    }

    /// <summary>A day while it is counted.</summary>
    sealed class Tally
    {
        readonly SortedDictionary<string, int> gathers = new(StringComparer.Ordinal);
        Instant? from, to;
        string? tallyId;
        Duration worked;
        double kilograms;
        bool isTallied, isLogged, isOpen;

        public void Work(Instant start, Instant end, bool isOpen)
        {
            (worked, this.isOpen) = (worked + (end - start), isOpen);
            Reach(start, end);
        }

        void Reach(Instant start, Instant end) => (from, to) = (Instant.Min(from ?? start, start), Instant.Max(to ?? end, end));

        public void Add(string id, PotEvent.Tally tally)
        {
            (tallyId, isTallied, isLogged) = (id, true, true);
            Reach(tally.From, tally.To);
            foreach (var count in tally.Counts) Add(count.Size, count.Count, count.NominalKilograms);
        }

        public void Add(PotEvent gather)
        {
            isLogged = true;
            Reach(gather.At, gather.At);
            if (gather is PotEvent.Gather sized) Add(sized.Size, sized.Count, sized.NominalKilograms);
            else if (gather is PotEvent.WeighedGather weighed) kilograms += weighed.Kilograms;
        }

        void Add(string size, int count, double each)
        {
            if (count > 0) gathers[size] = gathers.GetValueOrDefault(size) + count;
            kilograms += count * each;
        }

        public void MarkIfCovered(PotEvent.Tally tally)
        {
            if (from is not { } start || to is not { } end || end <= start) return;
            var shared = Instant.Min(end, tally.To) - Instant.Max(start, tally.From);
            if (shared >= (end - start) / 2) (isTallied, isLogged) = (true, true);
        }

        public PotDay Day(LocalDate date) => new(date, from!.Value, to!.Value, worked, gathers, kilograms, tallyId, isTallied, isLogged, !isOpen);
    }
}
