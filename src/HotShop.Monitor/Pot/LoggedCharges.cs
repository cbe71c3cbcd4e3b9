using HotShop.Monitor.Logbook;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>The charges of a log, with what is in doubt about all of them alike. Pure.</summary>
static class LoggedCharges
{
    public static IReadOnlyList<LoggedCharge> Of(IEnumerable<LogEntry> entries, PotPlan pot, Instant from, Instant to) =>
        [.. entries.Where(e => e.Entry == "charge" && e.At >= from && e.At < to).Select(e => Of(e, pot))];

    static LoggedCharge Of(LogEntry entry, PotPlan pot)
    {
        var material = PotLog.Material(entry, pot);
        var isStated = entry.Fields["yield"] is not null || pot.SaysYieldOf(material);
        var doubts = new ChargeDoubts(ScalePercent: pot.Options.ScaleUncertaintyPercent);
        return new(entry.At, material.GlassKilograms(PotLog.Kilograms(entry.Fields)), material.NeedsReaction, doubts.Glass(PotLog.Kilograms(entry.Fields), material, isStated));
    }

    /// <summary>Their sum: scale and yields are the same for all, so what is in doubt about them does not shrink with their number.</summary>
    public static Budget Sum(IReadOnlyList<LoggedCharge> charges) => Budget.Sum([.. charges.Select(c => c.Glass)]);

    /// <summary>Relative standard uncertainty of their sum.</summary>
    public static double Relative(IReadOnlyList<LoggedCharge> charges) => Sum(charges) is { Value: > 0 } sum ? sum.StandardUncertainty / sum.Value : 0;
}
