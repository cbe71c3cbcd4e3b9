using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Money;

/// <summary>
/// A span less an earlier one. One meter's error is the same in both and cancels but for what they differ by; the gas, its conditions and what had to be spread or filled in are each span's own.
/// </summary>
/// <param name="ours">The later span.</param>
/// <param name="theirs">The earlier one.</param>
/// <param name="meterRelative">Relative standard uncertainty of the studio's meter of a kind.</param>
sealed class SpanDifference(Spending ours, Spending theirs, Func<EnergyKind, double> meterRelative)
{
    /// <summary>kWh.</summary>
    public Estimate Energy => Kinds.Select(k => (Split(ours.EnergyOf(k), k) - Split(theirs.EnergyOf(k), k)).Estimate).Aggregate((a, b) => a + b);

    /// <summary>Null where one of them has no price.</summary>
    public decimal? Cost => ours.Cost is { } now && theirs.Cost is { } then ? now - then : null;

    public decimal CostUncertainty => (decimal)Kinds.Select(k => (Paid(ours, k) - Paid(theirs, k)).Estimate.StandardUncertainty).Aggregate(0.0, double.Hypot);

    /// <summary>Of what the earlier span cost.</summary>
    public Estimate? CostShare
    {
        get
        {
            if (Cost is not { } change || theirs.Cost is not { } before || before == 0) return null;
            // A ratio of the two: the common error cancels, what is each one's own does not.
            var (all, then) = ((double)(change + before), (double)before);
            var own = Math.Sqrt(Kinds.Sum(k => Math.Pow(Paid(ours, k).Own / then, 2) + Math.Pow(Paid(theirs, k).Own * all / then / then, 2)));
            return new Estimate((double)(change / before), own);
        }
    }

    static EnergyKind[] Kinds => Enum.GetValues<EnergyKind>();

    CommonAndOwn Paid(Spending spending, EnergyKind kind)
    {
        var paid = (double)spending.Charges.Where(c => c.Kind == kind).Sum(c => c.Amounts?.Sum() ?? 0);
        return Split(Estimate.Relative(paid, spending.RelativeOf(kind)), kind);
    }

    CommonAndOwn Split(Estimate all, EnergyKind kind)
    {
        var common = Math.Min(all.StandardUncertainty, Math.Abs(all.Value) * meterRelative(kind));
        return new CommonAndOwn(all.Value, common, Math.Sqrt(Math.Max(0, all.StandardUncertainty * all.StandardUncertainty - common * common)));
    }
}
