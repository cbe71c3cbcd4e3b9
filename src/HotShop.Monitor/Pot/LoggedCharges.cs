using HotShop.Monitor.Logbook;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>The charges of a log, with what is in doubt about all of them alike. Pure.</summary>
static class LoggedCharges
{
    /// <summary>A platform scale, within 1 % (common practice); rectangular.</summary>
    const double Scale = 0.0058;

    /// <summary>Cullet and frit: moisture and dirt up to 1 % (common practice). A yield that somebody stated, or that a recipe gives, to 1 %; rectangular.</summary>
    const double KnownYield = 0.0058;

    /// <summary>Batch of which nobody said what it leaves: recipes differ by 3 % either way from 0.85 (common practice); rectangular.</summary>
    const double UsualBatchYield = 0.0173;

    public static IReadOnlyList<LoggedCharge> Of(IEnumerable<LogEntry> entries, PotPlan pot, Instant from, Instant to) =>
        [.. entries.Where(e => e.Entry == "charge" && e.At >= from && e.At < to).Select(e => Of(e, pot))];

    static LoggedCharge Of(LogEntry entry, PotPlan pot)
    {
        var material = PotLog.Material(entry, pot);
        var isUsual = material.NeedsReaction && entry.Fields["yield"] is null && !pot.SaysYieldOf(material);
        return new(entry.At, material.GlassKilograms(PotLog.Kilograms(entry.Fields)), material.NeedsReaction, double.Hypot(Scale, isUsual ? UsualBatchYield : KnownYield));
    }

    /// <summary>Relative standard uncertainty of their sum: scale and yields are the same for all, so it does not shrink with their number.</summary>
    public static double Relative(IReadOnlyList<LoggedCharge> charges)
    {
        var kilograms = charges.Sum(c => c.GlassKilograms);
        return kilograms > 0 ? charges.Sum(c => c.GlassKilograms * c.Relative) / kilograms : 0;
    }
}
