namespace HotShop.Physics.Thermometry;

/// <summary>One stretch of a reference function as stored: emf in mV from °C, reference junction at 0 °C. It begins where the one before
/// ends.</summary>
internal sealed record DirectCurve(double ToCelsius, double[] Coefficients, GaussianTerm? Exponential)
{
    public double Millivolts(double celsius) =>
        Polynomial.At(Coefficients, celsius) + (Exponential?.At(celsius) ?? 0);

    /// <summary>Voltage in mV and sensitivity in mV/°C.</summary>
    public (double Millivolts, double Slope) WithSlope(double celsius)
    {
        var (value, slope) = Polynomial.WithSlopeAt(Coefficients, celsius);
        if (Exponential is null) return (value, slope);
        var bump = Exponential.At(celsius);
        return (value + bump, slope + bump * Exponential.RelativeSlopeAt(celsius));
    }
}

/// <summary>Type K's extra term above 0 °C, a0·exp(a1·(t − a2)²); leaving it out costs up to 3 °C near 127 °C.</summary>
internal sealed record GaussianTerm(double A0, double A1, double A2)
{
    public double At(double celsius) => A0 * Math.Exp(A1 * (celsius - A2) * (celsius - A2));

    /// <summary>Slope over value, per °C.</summary>
    public double RelativeSlopeAt(double celsius) => 2 * A1 * (celsius - A2);
}

/// <summary>A stretch between two temperatures with the voltages at its ends, turned around.</summary>
internal sealed record InverseStretch(DirectCurve Curve, double FromCelsius, double ToCelsius)
{
    readonly double fromMillivolts = Curve.Millivolts(FromCelsius);

    public double ToMillivolts { get; } = Curve.Millivolts(ToCelsius);

    /// <summary>Temperature in °C of a voltage of this stretch, to within rounding.</summary>
    public double Celsius(double millivolts)
    {
        // From the chord, Newton's steps shrink until rounding alone moves them: every reference function bends gently enough for that
        // (six steps on average, twelve at worst), so no inverse polynomial is needed and none can disagree with the function.
        var celsius = double.Lerp(FromCelsius, ToCelsius, (millivolts - fromMillivolts) / (ToMillivolts - fromMillivolts));
        var last = double.PositiveInfinity;
        while (true)
        {
            var (there, slope) = Curve.WithSlope(celsius);
            var step = (there - millivolts) / slope;
            if (!(Math.Abs(step) < last)) return celsius;
            celsius -= step;
            last = Math.Abs(step);
        }
    }
}

/// <summary>A type's functions as stored.</summary>
/// <param name="FromCelsius">Where the first stretch begins.</param>
/// <param name="LowestJunctionCelsius">Lowest temperature that a voltage can tell.</param>
internal sealed record ThermocoupleCurves(string Composition, double FromCelsius, double LowestJunctionCelsius, DirectCurve[] Direct);

/// <summary>The stored table of all types.</summary>
internal sealed record ThermocoupleTable(string Source, string Licence, Dictionary<ThermocoupleType, ThermocoupleCurves> Types);
