using NodaTime;

namespace HotShop.Physics.Pot;

/// <summary>A step of the estimator: an event, and whether its gathers may hide forgotten ones.</summary>
internal readonly record struct PotStep(Instant At, PotEvent Event, bool IsCounted);

/// <summary>Puts a log in order of time and works tallies into the gathers they replace.</summary>
internal static class PotTimeline
{
    // A tally says how many, not when: what the log missed is spread over its span in so many parts.
    const int Parts = 8;

    public static List<PotStep> Of(IReadOnlyList<PotEvent> events)
    {
        var steps = new List<PotStep>(events.Count);
        var tallies = events.OfType<PotEvent.Tally>().ToArray();
        foreach (var happened in events)
        {
            if (happened is PotEvent.Gather gather && tallies.Length > 0 && IsTallied(gather, tallies)) continue;
            if (happened is PotEvent.Tally tally) AddTally(tally, steps);
            else steps.Add(new(happened.At, happened, IsCounted: false));
        }
        // A stable sort: of what happened at the same moment, the log's order decides.
        return [.. steps.OrderBy(step => step.At)];
    }

    static bool IsTallied(PotEvent.Gather gather, PotEvent.Tally[] tallies) =>
        Array.Exists(tallies, tally => gather.At >= tally.From && gather.At <= tally.To);

    static void AddTally(PotEvent.Tally tally, List<PotStep> steps)
    {
        var span = tally.To - tally.From;
        foreach (var counted in tally.Counts)
            for (var part = 0; part < Parts; part++)
            {
                // Whole gathers whose parts add up to the count, whatever it is.
                var count = counted.Count * (part + 1) / Parts - counted.Count * part / Parts;
                if (count == 0) continue;
                var at = tally.From + span * ((part + 1.0) / Parts);
                steps.Add(new(at, new PotEvent.Gather(at, counted.NominalKilograms, count, counted.Size), IsCounted: true));
            }
    }
}
