using System.Globalization;

namespace HotShop.Physics.Thermometry;

/// <summary>A thermocouple of one letter type: °C to mV and back, with the terminals at any temperature. Immutable; safe to
/// share.</summary>
/// <remarks>Source: NIST Monograph 175 (1993); the same functions are in IEC 60584-1:2013.</remarks>
public sealed class Thermocouple
{
    static readonly Lazy<Dictionary<ThermocoupleType, Thermocouple>> All = new(() =>
        EmbeddedJson.Read<ThermocoupleTable>("Thermometry.its90.json").Types
            .ToDictionary(t => t.Key, t => new Thermocouple(t.Key, t.Value)));

    // Beyond the top of the range by this factor no couple of the type is left, only an input driven to its end.
    const double OpenCircuitFactor = 1.05;

    readonly double fromCelsius;
    readonly DirectCurve[] direct;
    readonly InverseStretch[] inverse;

    Thermocouple(ThermocoupleType type, ThermocoupleCurves curves)
    {
        (Type, Composition, fromCelsius, LowestJunctionCelsius, direct) = (type, curves.Composition, curves.FromCelsius, curves.LowestJunctionCelsius, curves.Direct);
        inverse = [.. direct.Select((curve, i) => new InverseStretch(curve, Math.Max(i == 0 ? fromCelsius : direct[i - 1].ToCelsius, LowestJunctionCelsius), curve.ToCelsius))];
        LowestJunctionMillivolts = CurveAt(LowestJunctionCelsius).Millivolts(LowestJunctionCelsius);
    }

    public ThermocoupleType Type { get; }

    /// <summary>Alloys of the positive and negative leg.</summary>
    public string Composition { get; }

    /// <summary>Ends of the stretches of the reference function, in °C, its first beginning included, ascending.</summary>
    public IReadOnlyList<double> StretchesCelsius => [fromCelsius, .. direct.Select(curve => curve.ToCelsius)];

    /// <summary>Lowest temperature that a voltage can tell, in °C; 250 for type B, whose emf is not single-valued near room
    /// temperature.</summary>
    public double LowestJunctionCelsius { get; }

    /// <summary>Highest temperature of the type's functions, in °C.</summary>
    public double HighestJunctionCelsius => direct[^1].ToCelsius;

    /// <summary>Voltage at <see cref="LowestJunctionCelsius"/>, in mV.</summary>
    public double LowestJunctionMillivolts { get; }

    /// <summary>Voltage at <see cref="HighestJunctionCelsius"/>, in mV.</summary>
    public double HighestJunctionMillivolts => inverse[^1].ToMillivolts;

    public static Thermocouple OfType(ThermocoupleType type) => All.Value[type];

    /// <summary>Voltage with the reference junction at 0 °C, in mV.</summary>
    /// <returns>mV; <see langword="null"/> outside the range of the type's direct function.</returns>
    public double? Millivolts(double celsius) =>
        celsius >= fromCelsius && celsius <= HighestJunctionCelsius ? CurveAt(celsius).Millivolts(celsius) : null;

    /// <summary>Change of voltage per degree, in mV/°C.</summary>
    /// <returns>mV/°C; <see langword="null"/> outside the range of the type's direct function.</returns>
    public double? MillivoltsPerDegree(double celsius) =>
        celsius >= fromCelsius && celsius <= HighestJunctionCelsius ? CurveAt(celsius).WithSlope(celsius).Slope : null;

    /// <summary>Temperature of the measuring junction, in °C (ITS-90), without the reason when there is none; allocates
    /// nothing.</summary>
    /// <param name="emfMillivolts">Voltage at the terminals, in mV.</param>
    /// <param name="terminalCelsius">Temperature of the terminals (the reference junction), in °C.</param>
    /// <returns>°C; <see langword="null"/> outside the type's range.</returns>
    public double? JunctionCelsius(double emfMillivolts, double terminalCelsius)
    {
        // Volts add, degrees do not: adding °C instead reads 15 °C high for type S at 1150 °C with terminals at 28 °C.
        var totalMillivolts = emfMillivolts + Millivolts(terminalCelsius);
        return totalMillivolts >= LowestJunctionMillivolts && totalMillivolts <= HighestJunctionMillivolts
            ? Inverse(totalMillivolts.Value)
            : null;
    }

    /// <summary>Temperature of the measuring junction, or the reason why the voltage tells none.</summary>
    /// <param name="emfMillivolts">Voltage at the terminals, in mV.</param>
    /// <param name="terminalCelsius">Temperature of the terminals (the reference junction), in °C.</param>
    public JunctionResult Junction(double emfMillivolts, double terminalCelsius)
    {
        if (JunctionCelsius(emfMillivolts, terminalCelsius) is { } celsius) return new JunctionResult.Celsius(celsius);
        if (double.IsNaN(emfMillivolts)) return new JunctionResult.OutOfRange("the input gave no voltage");
        if (Millivolts(terminalCelsius) is not { } terminalMillivolts)
            return new JunctionResult.OutOfRange(Text(
                $"terminals at {terminalCelsius:0.#} °C: type {Type} is defined from {fromCelsius} to {HighestJunctionCelsius} °C"));

        var totalMillivolts = emfMillivolts + terminalMillivolts;
        if (Math.Abs(totalMillivolts) > OpenCircuitFactor * HighestJunctionMillivolts)
            return new JunctionResult.OpenCircuit(Text(
                $"{totalMillivolts:0.000} mV, and a couple of type {Type} gives {HighestJunctionMillivolts:0.000} mV at most: open circuit, or another type is wired"));
        return new JunctionResult.OutOfRange(totalMillivolts < LowestJunctionMillivolts
            ? JunctionCelsius(-emfMillivolts, terminalCelsius) is { } reversed
                ? Text($"below {LowestJunctionCelsius:0.#} °C, the lowest that type {Type} can tell ({totalMillivolts:0.000} mV); the other way round it would be {reversed:0} °C: are the legs exchanged?")
                : Text($"below {LowestJunctionCelsius:0.#} °C, the lowest that type {Type} can tell ({totalMillivolts:0.000} mV)")
            : Text($"above {HighestJunctionCelsius:0.#} °C, the highest that type {Type} can tell ({totalMillivolts:0.000} mV)"));
    }

    double Inverse(double totalMillivolts)
    {
        var stretch = 0;
        while (stretch < inverse.Length - 1 && totalMillivolts > inverse[stretch].ToMillivolts) stretch++;
        return inverse[stretch].Celsius(totalMillivolts);
    }

    DirectCurve CurveAt(double celsius)
    {
        var stretch = 0;
        while (stretch < direct.Length - 1 && celsius > direct[stretch].ToCelsius) stretch++;
        return direct[stretch];
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
