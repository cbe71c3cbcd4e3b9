using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Physics.Annealing;

/// <summary>
/// The end of a cooling, after the heat is off: the chamber goes to the room's temperature exponentially, T = T_room + A·exp(−t/τ).
/// </summary>
/// <remarks>
/// Newton's law of cooling. A real chamber is a wall of layers and has several time constants; the last is the slowest and the one that counts below
/// some 100 °C. The room is not fitted: a tail that has not come near it says hardly anything about it.
/// </remarks>
public sealed class CoolingTail
{
    /// <summary>Fewer samples, or a fall of less than <see cref="LeastFallKelvin"/>, make no tail.</summary>
    public const int LeastSamples = 8;

    /// <summary>K.</summary>
    public const double LeastFallKelvin = 4;

    /// <summary>Closer to a room as warm as it may be, nobody can say when: K.</summary>
    const double LeastExcessKelvin = 0.5;

    readonly ExponentialFit middle, warmer, cooler;
    readonly Estimate roomCelsius;

    CoolingTail(ExponentialFit middle, ExponentialFit warmer, ExponentialFit cooler, Estimate roomCelsius, Instant from, Instant until)
    {
        (this.middle, this.warmer, this.cooler, this.roomCelsius) = (middle, warmer, cooler, roomCelsius);
        (From, Until) = (from, until);
    }

    /// <summary>First and last sample of the fit.</summary>
    public Instant From { get; }

    public Instant Until { get; }

    /// <summary>Time constant τ in hours, with the standard uncertainty of the fit and of the room together.</summary>
    public Estimate TimeConstantHours => new(1 / middle.RatePerHour,
        double.Hypot(middle.RateUncertainty / (middle.RatePerHour * middle.RatePerHour), (1 / warmer.RatePerHour - 1 / cooler.RatePerHour) / 2));

    /// <summary>Root mean square of what the exponential leaves unexplained, K.</summary>
    public double ResidualKelvin => middle.ResidualKelvin;

    /// <summary>Temperature of the fitted curve, °C.</summary>
    public double CelsiusAt(Instant at) => roomCelsius.Value + middle.ExcessKelvin((at - From).TotalHours);

    /// <summary>Hours from <see cref="From"/> until the chamber is down to a temperature, with their standard uncertainty: that of the fit, and that of the room.</summary>
    /// <param name="celsius">°C.</param>
    /// <returns>Null where it never gets there, because the room may be as warm.</returns>
    public Estimate? HoursTo(double celsius)
    {
        var excess = celsius - roomCelsius.Value;
        if (excess - roomCelsius.StandardUncertainty <= LeastExcessKelvin) return null;
        var hours = middle.HoursTo(excess);
        var room = (warmer.HoursTo(excess - roomCelsius.StandardUncertainty) - cooler.HoursTo(excess + roomCelsius.StandardUncertainty)) / 2;
        return new(hours, double.Hypot(middle.UncertaintyOfHoursTo(excess), room));
    }

    /// <summary>Fits a tail by least squares.</summary>
    /// <param name="samples">°C in the order of time, all after the heat went off.</param>
    /// <param name="roomCelsius">Where the cooling ends, °C, with its standard uncertainty.</param>
    /// <returns>Null where the samples show no cooling: too few, too little fall, or as cold as the room.</returns>
    public static CoolingTail? Fit(IReadOnlyList<Sample> samples, Estimate roomCelsius)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (samples.Count < LeastSamples) return null;
        var coldest = roomCelsius.Value + roomCelsius.StandardUncertainty + 1;
        var warm = samples.TakeWhile(s => s.Value > coldest).ToList();
        if (warm.Count < LeastSamples || warm[0].Value - warm[^1].Value < LeastFallKelvin) return null;
        var hours = warm.Select(s => (s.At - warm[0].At).TotalHours).ToArray();
        var celsius = warm.Select(s => s.Value).ToArray();
        return ExponentialFit.Of(hours, celsius, roomCelsius.Value) is { } middle
            && ExponentialFit.Of(hours, celsius, roomCelsius.Value + roomCelsius.StandardUncertainty) is { } warmer
            && ExponentialFit.Of(hours, celsius, roomCelsius.Value - roomCelsius.StandardUncertainty) is { } cooler
            ? new CoolingTail(middle, warmer, cooler, roomCelsius, warm[0].At, warm[^1].At)
            : null;
    }

    /// <summary>Hours that Newton's law takes from one temperature to another: τ·ln((T₁ − T_room)/(T₂ − T_room)).</summary>
    /// <returns>0 where it is there already; null where it never gets there.</returns>
    public static double? Hours(double fromCelsius, double toCelsius, double roomCelsius, double timeConstantHours)
    {
        Require.Positive(timeConstantHours);
        if (Require.Celsius(fromCelsius) <= Require.Celsius(toCelsius)) return 0;
        return toCelsius > Require.Celsius(roomCelsius) ? timeConstantHours * Math.Log((fromCelsius - roomCelsius) / (toCelsius - roomCelsius)) : null;
    }

    /// <summary>The time constant, in hours, that leads from one temperature to another in a time: what an earlier cooling teaches about the next.</summary>
    /// <returns>Null where it did not cool, or the room is as warm as its end.</returns>
    public static double? TimeConstant(double fromCelsius, double toCelsius, double roomCelsius, double hours) =>
        Hours(fromCelsius, toCelsius, roomCelsius, 1) is > 0 and var shape && hours > 0 ? hours / shape : null;
}
