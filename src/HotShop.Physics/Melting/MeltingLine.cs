using HotShop.Physics.Statistics;

namespace HotShop.Physics.Melting;

/// <summary>How good the inputs are, as relative standard uncertainties common to all days: they do not average out.</summary>
/// <param name="Energy">Meter, state of the gas, heating value; or a nameplate.</param>
/// <param name="Glass">Scale and yield.</param>
public sealed record CommonDoubt(double Energy, double Glass)
{
    public double Energy { get; } = Require.NotNegative(Energy);

    public double Glass { get; } = Require.NotNegative(Glass);
}

/// <summary>
/// Fuel per kilogram of a furnace, three ways, and what it would be at another throughput. Gross: all over the glass. Holding: power of the furnace
/// that is only held, at the temperatures it was held at in these days, doors shut. Melting: what these days burnt above that, over the glass
/// they melted: heat into the glass, doors opened to charge and gather, the hotter hours of a cook.
/// </summary>
/// <remarks>
/// A bare kWh/kg misleads where there is a base load: one furnace whose performance did not change needs 34.8, 25.0 and 21.7 therms a tonne at 500, 1000
/// and 1500 t a week (E = 9831 + 15.16 P; Energy Monitoring and Target Setting using CUSUM, Cheriton Technology Publications 1989).
/// Uncertainties after GUM (JCGM 100:2008, 5.1): one meter's and one scale's errors are common to all days and are not divided by their number.
/// </remarks>
public sealed class MeltingLine
{
    /// <summary>Fewer days of either kind give no melting energy; of charged ones no slope.</summary>
    public const int LeastDays = 7, LeastChargedDays = 3, LeastDaysForSlope = 8;

    /// <summary>Least scatter of the kilograms of charged days, as a share of their mean, that shows a slope.</summary>
    public const double LeastSpread = 0.05;

    const int LagDays = 3;

    readonly HoldingFit holding;
    readonly LinearFit? above;
    readonly IReadOnlyList<IReadOnlyList<double>> aboveCovariance = [];
    readonly bool hasBatch;

    MeltingLine(HoldingFit holding, IReadOnlyList<MeltingDay> days, double? heldCelsius, Estimate heldKilowatts, CommonDoubt doubt)
    {
        (this.holding, Days, HeldCelsius, Doubt) = (holding, days, heldCelsius, doubt);
        Charged = [.. days.Where(d => d.IsCharged)];
        (Hours, KilowattHours, Kilograms) = (days.Sum(d => d.Hours), days.Sum(d => d.KilowattHours), days.Sum(d => d.ChargedKilograms));
        Holding = Widened(heldKilowatts, doubt.Energy);
        var perKilogram = days.Sum(d => d.AboveHoldingKilowattHours) / Kilograms;
        Melting = Widened(new Estimate(perKilogram, heldKilowatts.StandardUncertainty * Hours / Kilograms), doubt.Energy, doubt.Glass);
        Gross = Widened(Estimate.Exact(KilowattHours / Kilograms), doubt.Energy, doubt.Glass);
        if (Charged.Count < LeastDaysForSlope || SpreadOf(Charged) < LeastSpread) return;
        hasBatch = Charged.Any(d => d.ReactingKilograms > 0) && Charged.Any(d => d.ReactingKilograms < d.ChargedKilograms);
        above = LinearFit.Of([.. Charged.Select(d => Row(1, d.ChargedKilograms, d.ReactingKilograms))], [.. Charged.Select(d => d.AboveHoldingKilowattHours)]);
        if (above is null) return;
        var first = Charged[0].From;
        aboveCovariance = above.NeweyWest([.. Charged.Select(d => (int)Math.Round((d.From - first).TotalDays))], LagDays);
        NextKilogram = Widened(above.Combined(Row(0, 1, BatchShare), aboveCovariance).WidenedByStudent(above.DegreesOfFreedom), doubt.Energy, doubt.Glass);
    }

    /// <summary>How good the inputs of its days are.</summary>
    public CommonDoubt Doubt { get; }

    public IReadOnlyList<MeltingDay> Days { get; }

    /// <summary>Those on which something was charged.</summary>
    public IReadOnlyList<MeltingDay> Charged { get; }

    /// <summary>Mean temperature it was held at; <see langword="null"/> where no setpoint is measured.</summary>
    public double? HeldCelsius { get; }

    /// <summary>Gross kW.</summary>
    public Estimate Holding { get; }

    /// <summary>Gross kWh/kg above holding.</summary>
    public Estimate Melting { get; }

    /// <summary>All energy over all glass, kWh/kg.</summary>
    public Estimate Gross { get; }

    /// <summary>What a further kilogram in the same number of charges would take, gross kWh/kg: less than <see cref="Melting"/>, which carries the
    /// doors opened for each charge; <see langword="null"/> where the days' charges differ too little to tell.</summary>
    public Estimate? NextKilogram { get; }

    public double Hours { get; }

    public double KilowattHours { get; }

    public double Kilograms { get; }

    /// <summary>Mean of all days, free ones included.</summary>
    public double KilogramsPerDay => Kilograms / Hours * 24;

    /// <summary>The same, with what scale and yields are in doubt for, kg.</summary>
    public Estimate PerDay => Estimate.Relative(KilogramsPerDay, Doubt.Glass);

    double BatchShare => Charged.Sum(d => d.ReactingKilograms) / Kilograms;

    /// <summary>Scatter of the kilograms of charged days over their mean.</summary>
    public static double SpreadOf(IReadOnlyList<MeltingDay> charged)
    {
        ArgumentNullException.ThrowIfNull(charged);
        if (charged.Count < 2) return 0;
        var mean = charged.Average(d => d.ChargedKilograms);
        return Math.Sqrt(charged.Sum(d => (d.ChargedKilograms - mean) * (d.ChargedKilograms - mean)) / (charged.Count - 1)) / mean;
    }

    /// <returns><see langword="null"/> where days, or charged ones, are too few.</returns>
    /// <param name="hours">Those of the days, and some before them.</param>
    public static MeltingLine? Of(IReadOnlyList<HeldHour> hours, IReadOnlyList<MeltingDay> days, HoldingFit holding, CommonDoubt doubt)
    {
        ArgumentNullException.ThrowIfNull(hours);
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(holding);
        ArgumentNullException.ThrowIfNull(doubt);
        if (days.Count < LeastDays || days.Count(d => d.IsCharged) < LeastChargedDays) return null;
        var celsius = hours.Where(h => h.Hour.From >= days[0].From && h.Hour.From < days[^1].To).Select(h => h.HeldCelsius).OfType<double>().ToList();
        double? held = celsius.Count > 0 ? celsius.Average() : null;
        // The value is the days' own; its uncertainty that of the line of power over temperature at their mean.
        var power = holding.Kilowatts(held) with { Value = days.Sum(d => d.HoldingKilowattHours) / days.Sum(d => d.Hours) };
        return new MeltingLine(holding, days, held, power, doubt);
    }

    /// <summary>Gross kWh/kg at another throughput, charged on as many days in as many loads.</summary>
    /// <param name="kilogramsPerDay">Mean of all days, above 0.</param>
    /// <returns><see langword="null"/> where <see cref="NextKilogram"/> is.</returns>
    public Estimate? At(double kilogramsPerDay)
    {
        Require.Positive(kilogramsPerDay);
        if (above is null) return null;
        var slope = above.Combined(Row(0, 1, BatchShare), aboveCovariance).WidenedByStudent(above.DegreesOfFreedom);
        var more = kilogramsPerDay - KilogramsPerDay;
        var perDay = new Estimate(KilowattHours / Hours * 24 + slope.Value * more, slope.StandardUncertainty * Math.Abs(more));
        return Widened(new Estimate(perDay.Value / kilogramsPerDay, perDay.StandardUncertainty / kilogramsPerDay), Doubt.Energy, Doubt.Glass);
    }

    /// <summary>
    /// What other days of the same furnace would burn by this line: held at their temperatures, charged as they were. The common errors of meter and scale
    /// are not in it: they are the same in what those days are compared with.
    /// </summary>
    /// <param name="days">Such days, made with the same <see cref="HoldingFit"/>.</param>
    /// <returns>kWh, with the days' own scatter; <see langword="null"/> where <see cref="NextKilogram"/> is.</returns>
    public Estimate? Expected(IReadOnlyList<MeltingDay> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        if (above is null) return null;
        var charged = days.Where(d => d.IsCharged).ToList();
        var melting = above.Combined(Row(charged.Count, charged.Sum(d => d.ChargedKilograms), charged.Sum(d => d.ReactingKilograms)), aboveCovariance).WidenedByStudent(above.DegreesOfFreedom);
        var scatter = above.ResidualStandardDeviation * Math.Sqrt(charged.Count);
        var held = holding.Kilowatts(HeldCelsius).StandardUncertainty * days.Sum(d => d.Hours);
        return new Estimate(days.Sum(d => d.HoldingKilowattHours) + melting.Value, double.Hypot(double.Hypot(melting.StandardUncertainty, scatter), held));
    }

    /// <summary>What a day of this furnace would have burnt only held, kWh.</summary>
    public Estimate HoldingOf(MeltingDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        return Widened(new Estimate(day.HoldingKilowattHours, holding.Kilowatts(HeldCelsius).StandardUncertainty * day.Hours), Doubt.Energy);
    }

    /// <summary>Expected less burnt, kWh: above 0 saved. The meter's error is the same in both, so only what they differ by is in doubt for it.</summary>
    /// <param name="days">As for <see cref="Expected"/>.</param>
    /// <returns><see langword="null"/> where <see cref="NextKilogram"/> is.</returns>
    public Estimate? Saved(IReadOnlyList<MeltingDay> days)
    {
        if (Expected(days) is not { } expected) return null;
        var difference = expected.Value - days.Sum(d => d.KilowattHours);
        return Widened(expected with { Value = difference }, Doubt.Energy);
    }

    double[] Row(double days, double kilograms, double batchKilograms) => hasBatch ? [days, kilograms, batchKilograms] : [days, kilograms];

    static Estimate Widened(Estimate estimate, params ReadOnlySpan<double> relative)
    {
        var sum = estimate.StandardUncertainty * estimate.StandardUncertainty;
        foreach (var one in relative) sum += one * one * estimate.Value * estimate.Value;
        return estimate with { StandardUncertainty = Math.Sqrt(sum) };
    }
}
