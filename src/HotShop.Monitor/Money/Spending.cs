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
    public decimal CostUncertainty => UncertaintyOf(Charges);

    /// <summary>The same of some charges of the span.</summary>
    public decimal UncertaintyOf(IEnumerable<DayCharge> charges) =>
        (decimal)charges.GroupBy(c => c.Kind).Select(g => Math.Abs((double)g.Sum(c => c.Amounts?.Sum() ?? 0)) * RelativeOf(g.Key)).Aggregate(0.0, double.Hypot);

    /// <summary>Relative standard uncertainty of all energy of a kind.</summary>
    public double RelativeOf(EnergyKind kind) => StudioUse.RelativeOf(EnergyOf(kind));

    /// <summary>Relative standard uncertainty of what one appliance used of a kind of energy.</summary>
    public double RelativeOf(string appliance, EnergyKind kind) => StudioUse.RelativeOf(EnergyOf(appliance, kind));

    /// <summary>Of what several used together; their meters' errors are taken as one.</summary>
    public double RelativeOf(IReadOnlySet<string> appliances) =>
        StudioUse.RelativeOf(StudioUse.Common(Enum.GetValues<EnergyKind>().SelectMany(kind => appliances.Select(a => EnergyOf(a, kind)))));

    /// <summary>What one appliance used of a kind of energy, kWh.</summary>
    Estimate EnergyOf(string appliance, EnergyKind kind)
    {
        if (!applianceEnergy.TryGetValue((appliance, kind), out var known))
            applianceEnergy[(appliance, kind)] = known = With(
                StudioUse.Common(Days.SelectMany(d => d.Shares).Where(s => s.Appliance == appliance && s.Kind == kind).Select(s => Estimate.Relative(s.KilowattHours, s.EnergyRelative))),
                m => StudioUse.Common(m.Shares.Where(s => s.Appliance == appliance && s.Kind == kind).Select(s => s.KilowattHours)));
        return known;
    }

    readonly Dictionary<(string Appliance, EnergyKind Kind), Estimate> applianceEnergy = [];

    /// <summary>Energy of a kind: the days' sum, with the uncertainty of the months where there are months.</summary>
    public Estimate EnergyOf(EnergyKind kind) =>
        With(StudioUse.Common(Days.Select(d => kind == EnergyKind.Gas ? d.Gas : d.Electricity)), m => kind == EnergyKind.Gas ? m.Gas : m.Electricity);

    /// <summary>Gas at base conditions, m³.</summary>
    public Estimate GasVolume => With(StudioUse.Common(Days.Select(d => d.GasVolume)), m => m.GasVolume) with { Value = GasCubicMetres };

    Estimate With(Estimate days, Func<StudioUse, Estimate> ofMonth)
    {
        if (Months.Count == 0) return days;
        var months = StudioUse.Common(Months.Select(ofMonth));
        // A month knows what passed in its gaps, a day without readings does not: where they differ the interval covers both.
        return new Estimate(days.Value, months.StandardUncertainty + Math.Abs(months.Value - days.Value) / Quantiles.Normal95);
    }

    public Estimate Energy => EnergyOf(EnergyKind.Gas) + EnergyOf(EnergyKind.Electricity);

    double GasCubicMetres => Days.Sum(d => d.Shares.Sum(s => s.BaseCubicMetres));

    /// <summary>Of the time of the days; 0 without days.</summary>
    public double MeasuredShare => Days.Count == 0 ? 0 : Days.Sum(d => d.MeasuredShare * d.Length.TotalHours) / Days.Sum(d => d.Length.TotalHours);

    /// <summary>The span cut to an earlier last day.</summary>
    public Spending Until(LocalDate last) => last >= Last ? this : new(First, last, [.. Days.Where(d => d.Day <= last)], [.. Charges.Where(c => c.Day <= last)], [], Hours);
}
