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

    public static double SlopeAt(ReadOnlySpan<double> coefficients, double x)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 1; i--) sum = sum * x + i * coefficients[i];
        return sum;
    }
}
