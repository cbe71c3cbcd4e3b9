using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Use and charges of the days of a span that have begun.</summary>
/// <param name="Hours">The hours that the days, and the rest of their months, were made from.</param>
/// <param name="Months">Use of the span by whole months, for their intervals; empty where the span is not made of months.</param>
sealed record Spending(LocalDate First, LocalDate Last, IReadOnlyList<DayUse> Days, IReadOnlyList<DayCharge> Charges, IReadOnlyList<StudioUse> Months, IReadOnlyList<StudioUse> Hours)
{
    /// <summary>Null where no day has a price.</summary>
    public decimal? Cost => Charges.Any(c => c.Amounts is not null) ? Charges.Sum(c => c.Total ?? 0) : null;

    /// <summary>Standard uncertainty of the cost: that of each kind's energy at the mean price of what was used. Standing charges are certain.</summary>
    public decimal CostUncertainty => (decimal)Math.Sqrt(Enum.GetValues<EnergyKind>().Sum(kind => Math.Pow((double)UncertaintyOf(kind), 2)));

    decimal UncertaintyOf(EnergyKind kind)
    {
        var energy = EnergyOf(kind);
        var paid = Charges.Where(c => c.Kind == kind).Sum(c => c.Amounts?.Sum() ?? 0);
        return energy.Value > 0 ? Math.Abs(paid) * (decimal)(energy.StandardUncertainty / energy.Value) : 0;
    }

    /// <summary>Energy of a kind: the days' sum, with the uncertainty of the months where there are months.</summary>
    public Estimate EnergyOf(EnergyKind kind)
    {
        var days = UseBook.Common(Days.Select(d => kind == EnergyKind.Gas ? d.Gas : d.Electricity));
        if (Months.Count == 0) return days;
        var months = UseBook.Common(Months.Select(m => kind == EnergyKind.Gas ? m.Gas : m.Electricity));
        // A month knows what passed in its gaps, a day without readings does not: where they differ the interval covers both.
        return new Estimate(days.Value, months.StandardUncertainty + Math.Abs(months.Value - days.Value) / Quantiles.Normal95);
    }

    public Estimate Energy => EnergyOf(EnergyKind.Gas) + EnergyOf(EnergyKind.Electricity);

    public double GasCubicMetres => Days.Sum(d => d.Shares.Sum(s => s.BaseCubicMetres));

    /// <summary>Of the time of the days; 0 without days.</summary>
    public double MeasuredShare => Days.Count == 0 ? 0 : Days.Sum(d => d.MeasuredShare * d.Length.TotalHours) / Days.Sum(d => d.Length.TotalHours);

    /// <summary>The span cut to an earlier last day.</summary>
    public Spending Until(LocalDate last) => last >= Last ? this : new(First, last, [.. Days.Where(d => d.Day <= last)], [.. Charges.Where(c => c.Day <= last)], [], Hours);
}
