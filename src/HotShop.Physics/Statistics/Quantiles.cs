using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>Factors between a standard uncertainty and an interval.</summary>
public static class Quantiles
{
    /// <summary>Probability that the service's intervals hold the true value: 95 %.</summary>
    public const double Level = 0.95;

    /// <summary>Half-width of a 95 % interval in standard deviations, normal distribution: 1.959964.</summary>
    public static double Normal95 { get; } = TwoSided(Level);

    /// <summary>Standard normal quantile.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public static double Normal(double probability) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Inner(probability));

    /// <summary>Half-width of a normal's interval with this probability, in standard deviations.</summary>
    public static double TwoSided(double probability) => Normal((1 + probability) / 2);

    /// <summary>Half-width of a Student t's interval with this probability, in its standard uncertainty; the normal's where the degrees of freedom are
    /// infinite.</summary>
    public static double TwoSided(double probability, double degreesOfFreedom) =>
        double.IsPositiveInfinity(degreesOfFreedom) ? TwoSided(probability) : StudentT((1 + probability) / 2, degreesOfFreedom);

    /// <summary>Quantile of Student's t.</summary>
    public static double StudentT(double probability, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, Require.Positive(degreesOfFreedom), Inner(probability));

    static double Inner(double probability) =>
        probability is > 0 and < 1
            ? probability
            : throw new ArgumentOutOfRangeException(nameof(probability), probability, "expected a probability above 0 and below 1");
}
