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

        // In units of the largest limit, so that a search by absolute steps serves every unit.
        var unit = halfWidths.Max();
        var end = (halfWidths.Sum() + Reach * normal) / unit;
        var coefficients = Coefficients([.. halfWidths.Select(a => a / unit)], normal / unit, end);
        return unit * Brent.FindRoot(x => Within(x / end, coefficients) - probability, 0, end);
    }

    /// <summary>Characteristic function at the multiples of π over the end, until what is left cannot be seen.</summary>
    static List<double> Coefficients(double[] halfWidths, double normal, double end)
    {
        var coefficients = new List<double>();
        double largest;
        do
        {
            var t = Math.PI * (coefficients.Count + 1) / end;
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

    /// <summary>Probability of an error within ± a share of the end.</summary>
    static double Within(double share, List<double> coefficients)
    {
        // Sines of the multiples of an angle follow from each other.
        double sum = 0, before = 0, sine = Math.Sin(Math.PI * share);
        var doubledCosine = 2 * Math.Cos(Math.PI * share);
        for (var k = 1; k <= coefficients.Count; k++)
        {
            sum += coefficients[k - 1] * sine / k;
            (before, sine) = (sine, doubledCosine * sine - before);
        }
        return share + 2 / Math.PI * sum;
    }
}
