using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Statistics;

namespace HotShop.Monitor.Reports;

/// <summary>What one appliance used for one purpose, gas and electricity together; or the standing charges.</summary>
/// <param name="Known">In a word where it is not measured: estimated, or the meter's remainder; empty where it is.</param>
sealed record WhereRow(string Name, string Purpose, Tone Tone, string Known, Interval EnergyKwh, AmountInterval? Amount, Figure Share)
{
    /// <summary>Name and purpose as one: "Furnace 1, holding".</summary>
    public string Title => Purpose.Length == 0 ? Name : $"{Name}, {Purpose}";

    public bool IsEstimated => Known.EndsWith("estimated", StringComparison.Ordinal);

    /// <summary>Dearest first. Adding up rounded amounts changes nothing: they are whole in the smallest unit.</summary>
    public static IReadOnlyList<WhereRow> Of(IEnumerable<AccountWhere> where, StudioFormat format) =>
        [.. where.GroupBy(w => (w.Appliance, w.Purpose)).Select(g => Row([.. g], format))
            .OrderBy(r => r.Tone == Tone.Charges).ThenByDescending(r => r.Amount?.Value ?? 0).ThenByDescending(r => r.EnergyKwh.Value)];

    static WhereRow Row(IReadOnlyList<AccountWhere> parts, StudioFormat format)
    {
        var first = parts[0];
        var energy = parts.Sum(p => p.EnergyKwh.Value);
        var priced = parts.Where(p => p.Amount is not null).ToList();
        return new(
            first.Purpose is null ? "Standing charges" : first.Name, first.Purpose is null ? "" : first.PurposeText, ToneOf(first.Purpose), KnownOf(parts),
            format.EnergyShown(new Estimate(energy, parts.Select(p => (p.EnergyKwh.High95 - p.EnergyKwh.Value) / Quantiles.Normal95).Aggregate(0.0, double.Hypot))),
            priced.Count > 0 ? format.Shown(priced.Sum(p => p.Amount!.Value), (decimal)priced.Select(p => (double)(p.Amount!.High95 - p.Amount.Value) / Quantiles.Normal95).Aggregate(0.0, double.Hypot)) : null,
            format.PercentFigure(parts.Sum(p => p.Share.Value)));
    }

    static string KnownOf(IReadOnlyList<AccountWhere> parts)
    {
        var used = parts.Where(p => p.EnergyKwh.Value > 0).ToList();
        return used.Any(p => p.Origin == Origin.Estimated) ? used.All(p => p.Origin == Origin.Estimated) ? "estimated" : "partly estimated"
            : used.Any(p => p.Origin == Origin.Derived) ? "what the main meter leaves over" : "";
    }

    public static Tone ToneOf(Purpose? purpose) => purpose switch
    {
        null => Tone.Charges,
        Money.Purpose.Holding => Tone.Holding,
        Money.Purpose.Melting => Tone.Melting,
        Money.Purpose.Working => Tone.GloryHoles,
        Money.Purpose.Annealing => Tone.Annealers,
        Money.Purpose.NotExplained => Tone.Unexplained,
        _ => Tone.Other,
    };
}
