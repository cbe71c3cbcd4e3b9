using HotShop.Physics.Statistics;
using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace HotShop.Physics.Uncertainty;

/// <summary>A sum of independent errors, each within limits (rectangular), and of a normal one: the half-width that holds it with a probability.</summary>
/// <remarks>
/// Exact but for rounding. The sum ends at the sum of the limits, so its distribution function is a Fourier series over that span, with the product of the
/// errors' characteristic functions as coefficients. Two standard uncertainties would be a fifth too wide where one rectangle rules. Source: Fourier inversion
/// of a characteristic function, as in any text on probability.
/// </remarks>
static class ErrorSum
{
    // Beyond this a normal error has less probability than a double's last bit.
    static readonly double Reach = -Quantiles.Normal(Precision.DoublePrecision);

    /// <param name="halfWidths">Limits of the rectangular errors, above 0.</param>
    /// <param name="normal">Standard deviation of the normal error, 0 or above.</param>
    /// <param name="probability">Above 0 and below 1.</param>
    public static double HalfWidth(IReadOnlyList<double> halfWidths, double normal, double probability)
    {
        if (halfWidths.Count == 0) return normal * Quantiles.TwoSided(probability);
        if (halfWidths.Count == 1 && normal == 0) return halfWidths[0] * probability;

        var end = halfWidths.Sum() + Reach * normal;
        var coefficients = Coefficients([.. halfWidths.Select(a => a / end)], normal / end);
        return end * Brent.FindRoot(x => Within(x, coefficients) - probability, 0, 1);
    }

    /// <summary>Characteristic function at the multiples of π, until what is left cannot be seen.</summary>
    static List<double> Coefficients(double[] halfWidths, double normal)
    {
        var coefficients = new List<double>();
        double largest;
        do
        {
            var t = Math.PI * (coefficients.Count + 1);
            largest = Math.Exp(-normal * normal * t * t / 2);
            var value = largest;
            foreach (var a in halfWidths)
            {
                value *= Trig.Sinc(a * t / Math.PI);
                largest = Math.Min(largest, largest / (a * t));
            }
            coefficients.Add(value);
        }
        while (largest / coefficients.Count > Precision.SinglePrecision);
        return coefficients;
    }

    /// <summary>Probability of an error within ±x, x from 0 to the end at 1.</summary>
    static double Within(double x, List<double> coefficients)
    {
        // Sines of the multiples of an angle follow from each other.
        double sum = 0, before = 0, sine = Math.Sin(Math.PI * x);
        var doubledCosine = 2 * Math.Cos(Math.PI * x);
        for (var k = 1; k <= coefficients.Count; k++)
        {
            sum += coefficients[k - 1] * sine / k;
            (before, sine) = (sine, doubledCosine * sine - before);
        }
        return x + 2 / Math.PI * sum;
    }
}
