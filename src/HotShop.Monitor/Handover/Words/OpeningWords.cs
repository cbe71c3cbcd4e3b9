using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Annealing;

namespace HotShop.Monitor.Handover.Words;

/// <summary>When each annealer can be opened.</summary>
static class OpeningWords
{
    public const string Note = "The time is that of the air at the thermocouple. Thick ware stays hotter inside: opening is for whoever knows what lies in it.";

    public static IReadOnlyList<HandoverLine> Of(Morning morning, MorningTimes times) => [.. morning.Openings.Select(o => Line(o, times))];

    static HandoverLine Line(Opening o, MorningTimes times)
    {
        var (target, now) = (Say.Temperature(o.TargetCelsius), o.Celsius is { } c ? Say.Temperature(c) : "");
        return o.Phase switch
        {
            CoolingPhase.NotKnown => new($"{o.Name}: not known.", "Its thermocouple says nothing fresh."),
            CoolingPhase.Down => new($"{o.Name}: below {target}{(o.DownSince is { } since ? $" since {times.At(since)}" : "")}, now {now}."),
            CoolingPhase.Hot => new($"{o.Name}: {now}, and not on its way down."),
            CoolingPhase.Cooling => o.Expected is { } e
                ? new($"{o.Name}: {target} at about {times.At(e.At)}.", $"Between {times.At(e.Earliest95)} and {times.At(e.Latest95)}, 19 times in 20. The heat is off, now {now}.")
                : new($"{o.Name}: cooling by itself, now {now}.", "It has not cooled for long enough to say when."),
            _ => OnCurve(o, target, now, times),
        };
    }

    static HandoverLine OnCurve(Opening o, string target, string now, MorningTimes times)
    {
        if (o.CurveEndsAt is not { } ends) return new($"{o.Name}: on its way down by its controller, now {now}.", "Type its curve when it starts, and the end of it is said here.");
        var curve = $"On its curve until {times.At(ends)}, which ends at {Say.Temperature(o.CurveEndCelsius ?? 0)}; now {now}.";
        return o.Expected is { } e
            ? new($"{o.Name}: {target} at about {times.At(e.At)}.", $"Between {times.At(e.Earliest95)} and {times.At(e.Latest95)}, 19 times in 20. {curve}")
            : new($"{o.Name}: on its curve until {times.At(ends)}.", $"It ends at {Say.Temperature(o.CurveEndCelsius ?? 0)}; no earlier cooling tells how long it takes from there. Now {now}.");
    }
}
