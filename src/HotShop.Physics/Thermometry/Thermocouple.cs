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

    readonly DirectCurve[] direct;
    readonly InverseCurve[] inverse;

    Thermocouple(ThermocoupleType type, ThermocoupleCurves curves)
    {
        (Type, Composition, direct, inverse) = (type, curves.Composition, curves.Direct, curves.Inverse);
        LowestJunctionMillivolts = MillivoltsWithin(LowestJunctionCelsius);
        HighestJunctionMillivolts = MillivoltsWithin(HighestJunctionCelsius);
    }

    public ThermocoupleType Type { get; }

    /// <summary>Alloys of the positive and negative leg.</summary>
    public string Composition { get; }

    /// <summary>Lowest temperature that a voltage can tell, in °C; 250 for type B, whose emf is not single-valued near room
    /// temperature.</summary>
    public double LowestJunctionCelsius => inverse[0].FromCelsius;

    /// <summary>Highest temperature of the type's functions, in °C.</summary>
    public double HighestJunctionCelsius => inverse[^1].ToCelsius;

    /// <summary>Voltage at <see cref="LowestJunctionCelsius"/>, in mV.</summary>
    public double LowestJunctionMillivolts { get; }

    /// <summary>Voltage at <see cref="HighestJunctionCelsius"/>, in mV.</summary>
    public double HighestJunctionMillivolts { get; }

    public static Thermocouple OfType(ThermocoupleType type) => All.Value[type];

    /// <summary>Voltage with the reference junction at 0 °C, in mV.</summary>
    /// <returns>mV; <see langword="null"/> outside the range of the type's direct function.</returns>
    public double? Millivolts(double celsius) =>
        celsius >= direct[0].FromCelsius && celsius <= direct[^1].ToCelsius ? MillivoltsWithin(celsius) : null;

    /// <summary>Change of voltage per degree, in mV/°C.</summary>
    /// <returns>mV/°C; <see langword="null"/> outside the range of the type's direct function.</returns>
    public double? MillivoltsPerDegree(double celsius) =>
        celsius >= direct[0].FromCelsius && celsius <= direct[^1].ToCelsius ? CurveAt(celsius).Slope(celsius) : null;

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
                $"terminals at {terminalCelsius:0.#} °C: type {Type} is defined from {direct[0].FromCelsius} to {direct[^1].ToCelsius} °C"));

        var totalMillivolts = emfMillivolts + terminalMillivolts;
        if (Math.Abs(totalMillivolts) > OpenCircuitFactor * HighestJunctionMillivolts)
            return new JunctionResult.OpenCircuit(Text(
                $"{totalMillivolts:0.000} mV, and a couple of type {Type} gives {HighestJunctionMillivolts:0.000} mV at most: open circuit, or another type is wired"));
        return new JunctionResult.OutOfRange(totalMillivolts < LowestJunctionMillivolts
            ? Text($"below {LowestJunctionCelsius:0.#} °C, the lowest that type {Type} can tell ({totalMillivolts:0.000} mV)")
            : Text($"above {HighestJunctionCelsius:0.#} °C, the highest that type {Type} can tell ({totalMillivolts:0.000} mV)"));
    }

    double Inverse(double totalMillivolts)
    {
        // The last stretch that covers the voltage: where stretches of types R and S overlap (1064 to 1200 °C) it is ten times better.
        var stretch = inverse.Length - 1;
        while (stretch > 0 && totalMillivolts < inverse[stretch].FromMillivolt) stretch--;

        // Three Newton steps on the direct function end below a millionth of a degree, whichever stretch was the start.
        var celsius = Polynomial.At(inverse[stretch].Coefficients, totalMillivolts);
        for (var step = 0; step < 3; step++)
        {
            var curve = CurveAt(celsius);
            celsius -= (curve.Millivolts(celsius) - totalMillivolts) / curve.Slope(celsius);
        }
        return celsius;
    }

    double MillivoltsWithin(double celsius) => CurveAt(celsius).Millivolts(celsius);

    DirectCurve CurveAt(double celsius)
    {
        var stretch = 0;
        while (stretch < direct.Length - 1 && celsius > direct[stretch].ToCelsius) stretch++;
        return direct[stretch];
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
