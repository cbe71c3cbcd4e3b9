using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Physics.Melting;

/// <summary>
/// Power of a furnace that is only held, from its settled hours: gross kW = a + b (held °C − mean) + c · gathers an hour, whose doors are thereby
/// taken out. The interval allows for hours of a day that are off together (Newey and West over a day).
/// </summary>
/// <remarks>
/// Not the constant of a line of daily energy over kilograms: doors opened at each charge, colder free days and the cook's hotter hours
/// would all go into it: in the simulated studio it is 7 % low, and the slope 38 % high (docs/scorecards.md).
/// </remarks>
public sealed class HoldingFit
{
    /// <summary>Fewer say nothing of how days differ.</summary>
    public const int LeastHours = 24, LeastDays = 5;

    const double LevelsApartKelvin = 5;
    const int LagHours = 24;

    readonly LinearFit fit;
    readonly IReadOnlyList<IReadOnlyList<double>> covariance;
    readonly double? meanCelsius;
    readonly bool hasLevels;

    HoldingFit(LinearFit fit, IReadOnlyList<HeldHour> hours, double? meanCelsius, bool hasLevels)
    {
        (this.fit, this.meanCelsius, this.hasLevels, Hours, Days) = (fit, meanCelsius, hasLevels, hours.Count, DaysOf(hours));
        var first = hours[0].Hour.From;
        covariance = fit.NeweyWest([.. hours.Select(h => (int)(h.Hour.From - first).TotalHours)], LagHours);
    }

    /// <summary>Settled hours it stands on.</summary>
    public int Hours { get; }

    /// <summary>Days (UTC) they lie in.</summary>
    public int Days { get; }

    public double ResidualKilowatts => fit.ResidualStandardDeviation;

    /// <returns><see langword="null"/> where settled, measured hours are too few.</returns>
    public static HoldingFit? Of(IReadOnlyList<HeldHour> hours)
    {
        ArgumentNullException.ThrowIfNull(hours);
        var settled = hours.Where(IsUsable).ToList();
        if (settled.Count < LeastHours || DaysOf(settled) < LeastDays) return null;
        var celsius = settled.Select(h => h.HeldCelsius).OfType<double>().ToList();
        double? mean = celsius.Count == settled.Count ? celsius.Average() : null;
        var hasLevels = mean is not null && celsius.Max() - celsius.Min() > LevelsApartKelvin;
        var usual = UsualGathers(settled);
        var hasGathers = usual.Values.Distinct().Skip(1).Any();
        double[] Row(HeldHour h) =>
            [1, .. hasLevels ? [h.HeldCelsius!.Value - mean!.Value] : Array.Empty<double>(), .. hasGathers ? [usual[GroupOf(h)]] : Array.Empty<double>()];
        return LinearFit.Of([.. settled.Select(Row)], [.. settled.Select(h => h.Hour.KilowattHours!.Value)]) is { } fit
            ? new HoldingFit(fit, settled, mean, hasLevels)
            : null;
    }

    /// <summary>Settled, measured, and nothing unlogged in it: counts towards the fit.</summary>
    public static bool IsUsable(HeldHour hour)
    {
        ArgumentNullException.ThrowIfNull(hour);
        return hour is { IsSettled: true, Hour: { KilowattHours: not null, IsWorkUnlogged: false } };
    }

    /// <summary>Power held at a temperature, gross kW, doors shut, nothing to melt.</summary>
    /// <param name="heldCelsius"><see langword="null"/>: as in the mean of the settled hours.</param>
    public Estimate Kilowatts(double? heldCelsius)
    {
        var row = new double[fit.Coefficients.Count];
        row[0] = 1;
        if (hasLevels && heldCelsius is { } celsius) row[1] = celsius - meanCelsius!.Value;
        return fit.Combined(row, covariance).WidenedByStudent(Days - 1);
    }

    /// <summary>
    /// Gathers of the hour as usual at this time of day and temperature. A single hour's count is off: some are forgotten, and a door opened at its end is
    /// made good in the next. Counts that are off flatten a slope and would lift the constant; means over many days do not (Wald 1940).
    /// </summary>
    static Dictionary<(int, double?), double> UsualGathers(IReadOnlyList<HeldHour> hours) =>
        hours.GroupBy(GroupOf).ToDictionary(g => g.Key, g => g.Average(h => h.Hour.Gathers));

    static (int Hour, double? Celsius) GroupOf(HeldHour hour) => (hour.Hour.From.InUtc().Hour, hour.HeldCelsius is { } celsius ? Math.Round(celsius / 10) : null);

    static int DaysOf(IReadOnlyList<HeldHour> hours) => hours.Select(h => h.Hour.From.InUtc().Date).Distinct().Count();
}
