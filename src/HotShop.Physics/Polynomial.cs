namespace HotShop.Physics;

/// <summary>Polynomials with the constant term first, by Horner's rule.</summary>
internal static class Polynomial
{
    public static double At(ReadOnlySpan<double> coefficients, double x)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--) sum = sum * x + coefficients[i];
        return sum;
    }

    /// <summary>Value and slope in one pass.</summary>
    public static (double Value, double Slope) WithSlopeAt(ReadOnlySpan<double> coefficients, double x)
    {
        double value = 0, slope = 0;
        for (var i = coefficients.Length - 1; i >= 0; i--) (value, slope) = (value * x + coefficients[i], slope * x + value);
        return (value, slope);
    }
}
