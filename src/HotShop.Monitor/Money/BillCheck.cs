using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Lays a bill beside the meters: the same days, the same kind of energy, and how far they may differ.</summary>
sealed class BillCheck(BillBook bills, StudioGas gas, StudioFormat format)
{
    /// <summary>Beyond this part of the bill a difference wants an explanation (common practice), unless the meters' own doubt covers it.</summary>
    const double Unexplained = 0.05;

    /// <summary>Part of the bill's time that must be measured before a comparison says anything.</summary>
    const double EnoughMeasured = 0.9;

    /// <param name="spend">Use and charges of days.</param>
    public IReadOnlyList<BillComparison> Of(LocalDate first, LocalDate last, Func<LocalDate, LocalDate, Spending> spend) =>
        [.. bills.Touching(first, last).Select(b => Compare(b, spend(b.First, b.Last)))];

    internal BillComparison Compare(Bill bill, Spending spending)
    {
        var billed = KilowattHours(bill);
        var meters = spending.EnergyOf(bill.Kind);
        var charges = spending.Charges.Where(c => c.Kind == bill.Kind).ToList();
        var priced = charges.Count > 0 && charges.All(c => c.Amounts is not null) ? charges.Sum(c => c.Total ?? 0) : (decimal?)null;
        var isKnown = meters.Value > 0 && spending.MeasuredShare >= EnoughMeasured;
        var difference = meters.Value - billed;
        var isWithin = isKnown && billed >= meters.Low95 && billed <= meters.High95;
        var isNotExplained = isKnown && !isWithin && billed > 0 && Math.Abs(difference) / billed > Unexplained;
        return new BillComparison(
            bill.Id, bill.First, bill.Last, bill.Kind, format.Quantity(bill.Quantity ?? 0, bill.Unit.NameOf(), DecimalsOf(bill.Quantity ?? 0)), format.EnergyFigure(billed),
            bill.Amount is { } amount ? new Amount(amount, format.Amount(LargestRemainder.Round(amount, format.Digits))) : null,
            meters.Value > 0 ? format.EnergyShown(meters) : null, priced is { } whole ? format.Shown(whole, spending.UncertaintyOf(charges)) : null,
            meters.Value > 0 ? format.EnergyDifferenceShown(meters with { Value = difference }) : null,
            meters.Value > 0 && billed > 0 ? format.PercentShown(new Estimate(difference / billed, meters.StandardUncertainty / billed)) : null,
            isKnown ? isWithin : null, isNotExplained, Words(spending, billed, meters, isKnown, isWithin, isNotExplained));
    }

    string Words(Spending spending, double billed, Estimate meters, bool isKnown, bool isWithin, bool isNotExplained)
    {
        if (meters.Value <= 0) return "the meters have nothing of these days";
        if (!isKnown) return $"only {format.Percent(spending.MeasuredShare)} of these days is measured: too little to compare";
        var share = billed > 0 ? format.Percent(Math.Abs(meters.Value - billed) / billed) : "";
        var way = meters.Value > billed ? "more" : "less";
        if (isWithin) return $"agrees: the meters have {share} {way}, within their own doubt";
        return isNotExplained
            ? $"not explained: the meters have {share} {way}; compare the days of the reading and the heating value, ask the utility about pressure and temperature at the meter, and think of use that no meter counts"
            : $"the meters have {share} {way}: more than their own doubt, less than the 5 % that want an explanation";
    }

    /// <summary>Energy of a bill, gross: as it states it; else by its unit; a volume by the studio's heating value at base conditions.</summary>
    double KilowattHours(Bill bill)
    {
        if (bill.EnergyKilowattHours is { } stated) return (double)stated;
        var quantity = (double)(bill.Quantity ?? 0);
        return bill.Unit.CubicMetres() is { } cubicMetres ? gas.Fuel.GrossKilowattHours(quantity * cubicMetres) : quantity * bill.Unit.KilowattHours()!.Value;
    }

    static int DecimalsOf(decimal value) => Math.Min(3, (int)value.Scale);
}
