using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>How an energy is known: by its own meter or sensor; as what a main meter leaves over or as a spread of typed readings; or from nameplates and on-time.</summary>
public enum Origin { Measured, Derived, Estimated }

/// <summary>What one appliance used of one kind of energy over a stretch of time.</summary>
/// <param name="Appliance">Id; what is left over of a main meter goes to the shop.</param>
/// <param name="KilowattHours">Gas: gross.</param>
/// <param name="BaseCubicMetres">Gas at base conditions; 0 where it was only estimated as energy, or for electricity.</param>
/// <param name="LineCubicMetres">As the meter counted it.</param>
public sealed record FuelShare(string Appliance, EnergyKind Kind, Origin Origin, Estimate KilowattHours, double BaseCubicMetres, double LineCubicMetres)
{
    /// <summary>Relative standard uncertainty that the gas and its conditions bring into the energy; 0 for electricity.</summary>
    public double GasRelative { get; init; }

    /// <summary>The part of it that the conditions in the line bring into the volume at base conditions.</summary>
    public double ConditionsRelative { get; init; }

    /// <summary>Relative standard uncertainty of the volume as the meter counts it.</summary>
    public double LineRelative => Math.Sqrt(Math.Max(0, Square(StudioUse.RelativeOf(KilowattHours)) - Square(GasRelative)));

    /// <summary>Volume at base conditions, m³: what the energy is in doubt for, without the heating value.</summary>
    public Estimate BaseVolume => Estimate.Relative(BaseCubicMetres, double.Hypot(LineRelative, ConditionsRelative));

    static double Square(double x) => x * x;
}

/// <summary>What the studio used over a stretch of time. The gas shares make the gas, the electric ones the electricity: nothing is counted twice.</summary>
/// <param name="MeasuredShare">Part of the time that a meter or sensor speaks for, 0 to 1.</param>
/// <param name="Resets">Times a counter lost its thread.</param>
public sealed record StudioUse(Instant From, Instant To, IReadOnlyList<FuelShare> Shares, Estimate Gas, Estimate Electricity, double MeasuredShare, int Resets)
{
    /// <summary>The part of both that meters and sensors counted, typed readings included; the rest is from nameplates and modes alone.</summary>
    public Estimate Metered { get; init; }

    /// <summary>Why the gas, and why the electricity may be off, kWh.</summary>
    internal Budget GasBudget { get; init; } = new(0);

    internal Budget ElectricityBudget { get; init; } = new(0);

    /// <summary>Both energies, kWh. One kind's meters know nothing of the other's.</summary>
    public Estimate Total => Gas + Electricity;

    /// <summary>Gas at base conditions, m³: known as its energy is, without the heating value. Parts that are only spread are not known better for being added.</summary>
    public Estimate GasVolume => Shares.FirstOrDefault(s => s.Kind == EnergyKind.Gas) is { } gas
        ? (gas with { KilowattHours = Gas, BaseCubicMetres = Shares.Sum(s => s.BaseCubicMetres) }).BaseVolume : Estimate.Exact(0);

    /// <summary>Part of the time that a meter or sensor speaks for the gas alone, 0 to 1; null where no gas is measured.</summary>
    public double? GasMeasuredShare { get; init; }

    /// <summary>Stretches one after the other. One meter's error is the same in all of them, so their standard uncertainties add (GUM, JCGM 100:2008, 5.2.2); what differs from
    /// stretch to stretch is then overstated a little.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static StudioUse Sum(IReadOnlyList<StudioUse> stretches)
    {
        if (stretches.Count == 0) throw new ArgumentException("a sum of nothing", nameof(stretches));
        var hours = stretches.Sum(s => (s.To - s.From).TotalHours);
        return new StudioUse(
            stretches[0].From, stretches[^1].To,
            [.. stretches.SelectMany(s => s.Shares).GroupBy(s => (s.Appliance, s.Kind)).Select(g => new FuelShare(
                g.Key.Appliance, g.Key.Kind, g.Max(s => s.Origin), Common(g.Select(s => s.KilowattHours)), g.Sum(s => s.BaseCubicMetres), g.Sum(s => s.LineCubicMetres))
                { GasRelative = g.Max(s => s.GasRelative), ConditionsRelative = g.Max(s => s.ConditionsRelative) })],
            Common(stretches.Select(s => s.Gas)), Common(stretches.Select(s => s.Electricity)),
            hours > 0 ? stretches.Sum(s => s.MeasuredShare * (s.To - s.From).TotalHours) / hours : 0, stretches.Sum(s => s.Resets))
        {
            GasBudget = Budget.Sum([.. stretches.Select(s => s.GasBudget)]), ElectricityBudget = Budget.Sum([.. stretches.Select(s => s.ElectricityBudget)]),
            Metered = Common(stretches.Select(s => s.Metered)),
            GasMeasuredShare = hours > 0 && stretches.Any(s => s.GasMeasuredShare is not null) ? stretches.Sum(s => (s.GasMeasuredShare ?? 0) * (s.To - s.From).TotalHours) / hours : null,
        };
    }

    /// <summary>Standard uncertainty over the value; 0 where there is nothing, which has no part of anything to be in doubt for.</summary>
    internal static double RelativeOf(Estimate energy) => energy.Value > 0 ? energy.StandardUncertainty / energy.Value : 0;

    /// <summary>A sum of parts whose error is common to them, as one meter's is: standard uncertainties add (GUM, JCGM 100:2008, 5.2.2).</summary>
    internal static Estimate Common(IEnumerable<Estimate> parts) =>
        parts.Aggregate(Estimate.Exact(0), (sum, one) => new Estimate(sum.Value + one.Value, sum.StandardUncertainty + one.StandardUncertainty));
}
