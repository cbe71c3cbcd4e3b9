namespace HotShop.Physics.Thermometry;

/// <summary>One stretch of a direct function: emf in mV from °C, reference junction at 0 °C.</summary>
internal sealed record DirectCurve(double FromCelsius, double ToCelsius, double[] Coefficients, GaussianTerm? Exponential)
{
    public double Millivolts(double celsius) =>
        Polynomial.At(Coefficients, celsius) + (Exponential?.At(celsius) ?? 0);

    /// <summary>Sensitivity in mV/°C.</summary>
    public double Slope(double celsius) =>
        Polynomial.SlopeAt(Coefficients, celsius) + (Exponential?.SlopeAt(celsius) ?? 0);
}

/// <summary>Type K's extra term above 0 °C, a0·exp(a1·(t − a2)²); leaving it out costs up to 3 °C near 127 °C.</summary>
internal sealed record GaussianTerm(double A0, double A1, double A2)
{
    public double At(double celsius) => A0 * Math.Exp(A1 * (celsius - A2) * (celsius - A2));

    public double SlopeAt(double celsius) => At(celsius) * 2 * A1 * (celsius - A2);
}

/// <summary>One stretch of a printed inverse: °C from mV, good to a few hundredths of a degree.</summary>
internal sealed record InverseCurve(double FromMillivolt, double ToMillivolt, double FromCelsius, double ToCelsius, double[] Coefficients);

/// <summary>A type's functions as stored.</summary>
internal sealed record ThermocoupleCurves(string Composition, DirectCurve[] Direct, InverseCurve[] Inverse);

/// <summary>The stored table of all types.</summary>
internal sealed record ThermocoupleTable(string Source, string Licence, Dictionary<ThermocoupleType, ThermocoupleCurves> Types);
