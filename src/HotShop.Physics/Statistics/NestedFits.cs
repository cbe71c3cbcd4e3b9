using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>Whether further regressors explain more than chance would: F test of two fits of the same values.</summary>
/// <param name="F">Squares explained per further coefficient, over the wider fit's residual variance.</param>
/// <param name="FurtherCoefficients">1 or more.</param>
/// <param name="DegreesOfFreedom">Of the wider fit.</param>
public sealed record NestedFits(double F, int FurtherCoefficients, int DegreesOfFreedom)
{
    /// <param name="narrow">Its regressors are among the wide fit's, or mixes of them.</param>
    /// <param name="wide">With more coefficients, of the same values.</param>
    public static NestedFits Of(LinearFit narrow, LinearFit wide)
    {
        ArgumentNullException.ThrowIfNull(narrow);
        ArgumentNullException.ThrowIfNull(wide);
        var further = narrow.DegreesOfFreedom - wide.DegreesOfFreedom;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(further, nameof(wide));
        return new((narrow.ResidualSumOfSquares - wide.ResidualSumOfSquares) / further * wide.DegreesOfFreedom / wide.ResidualSumOfSquares, further, wide.DegreesOfFreedom);
    }

    /// <summary>Probability of an F as large by chance alone, 0 to 1.</summary>
    public double Chance => 1 - FisherSnedecor.CDF(FurtherCoefficients, DegreesOfFreedom, Math.Max(0, F));
}
