using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Physics.Thermometry;

/// <summary>Why a temperature may be off: its sensor as delivered or as calibrated, the input, the terminals and drift. Each as limits
/// either way, taken as rectangular, but for a calibration, whose uncertainty is that of many small things.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), 4.3.7. What the wire's class, the input or the terminals do is one error for as long as nobody touches them,
/// so it does not average out over readings.</remarks>
public sealed record TemperatureUncertainty
{
    /// <summary>Type of the couple; <see langword="null"/> for another sensor.</summary>
    public ThermocoupleType? Couple { get; init; }

    /// <summary>Class of the couple's wire as delivered; counts for nothing without <see cref="Couple"/>.</summary>
    public ToleranceClass? Class { get; init; }

    /// <summary>What the maker states for the sensor as a whole, in °C either way; 0: nothing.</summary>
    public double StatedCelsius { get; init => field = Require.NotNegative(value); }

    /// <summary>Error of the input that measures the couple's voltage, in µV either way.</summary>
    public double InputMicrovolts { get; init => field = Require.NotNegative(value); }

    /// <summary>Error of the temperature of the terminals, in °C either way.</summary>
    public double TerminalsCelsius { get; init => field = Require.NotNegative(value); }

    /// <summary>Drift since the sensor was new or was calibrated, in °C either way.</summary>
    public double DriftCelsius { get; init => field = Require.NotNegative(value); }

    /// <summary>Combined standard uncertainty of a temperature, in °C; allocates nothing.</summary>
    /// <param name="celsius">The temperature, in °C.</param>
    /// <param name="terminalCelsius">Temperature of the couple's terminals, in °C.</param>
    /// <param name="calibrationCelsius">Standard uncertainty of the correction that was added, in °C; it takes the place of class and maker's statement.</param>
    /// <returns>°C; <see langword="null"/> where nothing is said of the sensor itself, or its class or functions do not reach this temperature.</returns>
    public double? StandardCelsius(double celsius, double terminalCelsius, double? calibrationCelsius = null) =>
        LimitsAt(celsius, terminalCelsius, calibrationCelsius) is not { } limits ? null
            : Math.Sqrt(Square(limits.Class) + Square(limits.Stated) + Square(limits.Input) + Square(limits.Terminals) + Square(limits.Drift) + (calibrationCelsius * calibrationCelsius ?? 0));

    /// <summary>The same with what each reason has of it, and the 95 % interval.</summary>
    /// <inheritdoc cref="StandardCelsius"/>
    public Budget? At(double celsius, double terminalCelsius, double? calibrationCelsius = null) =>
        LimitsAt(celsius, terminalCelsius, calibrationCelsius) is not { } limits ? null : new Budget(celsius,
            Contribution.CommonWithin("class of the wire", limits.Class), Contribution.CommonWithin("as its maker states", limits.Stated),
            new Contribution("calibration", calibrationCelsius ?? 0) { IsCommon = true },
            Contribution.CommonWithin("input", limits.Input), Contribution.CommonWithin("terminals", limits.Terminals), Contribution.CommonWithin("drift", limits.Drift));

    Limits? LimitsAt(double celsius, double terminalCelsius, double? calibrationCelsius)
    {
        var isCalibrated = calibrationCelsius is not null;
        if (!isCalibrated && StatedCelsius == 0 && (Class is null || Couple is null)) return null;
        if (Couple is not { } type) return new(0, isCalibrated ? 0 : StatedCelsius, 0, 0, DriftCelsius);
        var couple = Thermocouple.OfType(type);
        if (couple.MillivoltsPerDegree(celsius) is not { } slope || couple.MillivoltsPerDegree(terminalCelsius) is not { } terminalSlope) return null;
        var limit = isCalibrated ? 0 : Class is null ? 0 : Class.ClaimableCelsius(type, celsius);
        if (limit is not { } allowed) return null;
        return new(allowed, isCalibrated ? 0 : StatedCelsius, InputMicrovolts / MicrovoltsPerMillivolt / slope, TerminalsCelsius * Math.Abs(terminalSlope) / slope, DriftCelsius);
    }

    static double Square(double limit)
    {
        var standard = Estimate.WithinLimits(0, limit).StandardUncertainty;
        return standard * standard;
    }

    const double MicrovoltsPerMillivolt = 1000;

    readonly record struct Limits(double Class, double Stated, double Input, double Terminals, double Drift);
}
