using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>Factors between a standard uncertainty and an interval.</summary>
public static class Quantiles
{
    /// <summary>Half-width of a 95 % interval in standard deviations, normal distribution: 1.959964.</summary>
    public static double Normal95 { get; } = Normal(0.975);

    /// <summary>Standard normal quantile.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public static double Normal(double probability) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Inner(probability));

    /// <summary>Quantile of Student's t.</summary>
    public static double StudentT(double probability, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, Require.Positive(degreesOfFreedom), Inner(probability));

    static double Inner(double probability) =>
        probability is > 0 and < 1
            ? probability
            : throw new ArgumentOutOfRangeException(nameof(probability), probability, "expected a probability above 0 and below 1");
}
