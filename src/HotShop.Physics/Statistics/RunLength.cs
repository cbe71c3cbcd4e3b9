using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace HotShop.Physics.Statistics;

/// <summary>Mean number of steps of a chance process on a stretch until it leaves it.</summary>
/// <remarks>L(z) = 1 + P(z) L(p) + ∫ L(x) f(z, x) dx, by Gauss-Legendre quadrature (Nyström), with as many points as it takes. A mean
/// beyond what rounding resolves, about 1e14, is infinite.</remarks>
static class RunLength
{
    /// <param name="low">Where the stretch begins.</param>
    /// <param name="high">Where it ends.</param>
    /// <param name="start">Where the process starts.</param>
    /// <param name="density">Of going from one place to another in one step.</param>
    /// <param name="landing">A place where the process may land with a probability of its own, and that probability from another place.</param>
    public static double Mean(double low, double high, double start, Func<double, double, double> density, Func<double, (double Place, double Probability)> landing)
    {
        // Twice as many points until they change nothing that a table would print, or only what rounding leaves of the steps that leave.
        var points = 1;
        var (before, leaving) = (double.NaN, LeavingPerStep(points));
        while (!(Math.Abs(leaving - before) <= Math.Max(Precision.SinglePrecision * leaving, Precision.DoublePrecision * points)))
            (before, leaving) = (leaving, LeavingPerStep(points += points));
        return leaving > Precision.DoublePrecision * points ? 1 / leaving : double.PositiveInfinity;

        double LeavingPerStep(int count)
        {
            var rule = new GaussLegendreRule(low, high, count);
            double[] places = [.. rule.Abscissas, landing(start).Place];
            double[] weights = [.. rule.Weights, 0];
            var system = Matrix<double>.Build.Dense(places.Length, places.Length, (i, j) =>
                (i == j ? 1 : 0) - (j < count ? weights[j] * density(places[i], places[j]) : landing(places[i]).Probability));
            var runs = system.Solve(Vector<double>.Build.Dense(places.Length, 1));
            // The equation itself carries the solution from the points to the start.
            return 1 / (1 + landing(start).Probability * runs[count] + Enumerable.Range(0, count).Sum(j => weights[j] * density(start, places[j]) * runs[j]));
        }
    }
}
