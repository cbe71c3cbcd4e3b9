namespace HotShop.Physics.Statistics;

/// <summary>How much a value that wanders about its mean still wanders once it is averaged over a time.</summary>
public static class TimeAverage
{
    /// <summary>Variance of the average over the variance of a moment, 0 to 1.</summary>
    /// <param name="span">What it is averaged over, in any unit of time, 0 or above.</param>
    /// <param name="memory">Correlation time in the same unit, above 0: after it the value remembers 1/e of where it was.</param>
    /// <remarks>For an exponential correlation 2r(1 − r(1 − e^(−1/r))) with r = memory over span. Source: Papoulis, Probability, Random Variables and
    /// Stochastic Processes, variance of a time average.</remarks>
    public static double VarianceShare(double span, double memory)
    {
        if (Require.NotNegative(span) == 0) return 1;
        var ratio = Require.Positive(memory) / span;
        return 2 * ratio * (1 - ratio * (1 - Math.Exp(-1 / ratio)));
    }
}
