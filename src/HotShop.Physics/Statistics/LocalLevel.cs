using MathNet.Numerics;

namespace HotShop.Physics.Statistics;

/// <summary>A level that wanders, seen through noise: each step it moves a little, each value shows it a little off.</summary>
/// <param name="NoiseVariance">Of a value about the level, in its unit squared; above 0.</param>
/// <param name="StepVariance">Of the level's move from one value to the next, in the unit squared; 0 or above.</param>
/// <remarks>Source: J. Durbin and S. J. Koopman, Time Series Analysis by State Space Methods, 2001, chapter 2. Values are evenly spaced; a missing one is
/// null.</remarks>
public sealed record LocalLevel(double NoiseVariance, double StepVariance)
{
    public double NoiseVariance { get; } = Require.Positive(NoiseVariance);

    public double StepVariance { get; } = Require.NotNegative(StepVariance);

    /// <summary>The level along the values, nothing being known of it before the first.</summary>
    /// <param name="values">At least one that is not missing.</param>
    public LevelCourse Along(IReadOnlyList<double?> values) => new(this, values, null);

    /// <summary>The level along the values.</summary>
    /// <param name="values">In steps of one size.</param>
    /// <param name="before">What is believed of the level at the first.</param>
    public LevelCourse Along(IReadOnlyList<double?> values, Estimate before) => new(this, values, before);

    /// <summary>The variances that make the values likeliest.</summary>
    /// <param name="values">At least three that are not missing.</param>
    /// <returns><see langword="null"/> where fewer are given, or all are the same.</returns>
    public static LocalLevel? Fit(IReadOnlyList<double?> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count(v => v is not null) < 3 || values.Where(v => v is not null).Distinct().Count() == 1) return null;

        // Only the ratio of the two need be searched: the noise variance that goes with it is a mean of squares.
        var widest = -Math.Log(Precision.SinglePrecision);
        var best = FindMinimum.OfScalarFunctionConstrained(log => -Scaled(values, Math.Exp(log)).Along(values).LogLikelihood, -widest, widest, Precision.SinglePrecision);
        return Scaled(values, Math.Exp(best));
    }

    /// <summary>The likeliest noise variance for a ratio of the step's variance to it.</summary>
    static LocalLevel Scaled(IReadOnlyList<double?> values, double ratio)
    {
        var noise = new LocalLevel(1, ratio).Along(values).MeanSquaredSurprise;
        return new LocalLevel(noise, ratio * noise);
    }
}
