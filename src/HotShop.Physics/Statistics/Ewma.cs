using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>A mean that forgets: each value takes a fixed weight, and what came before fades.</summary>
/// <param name="Target">What values are expected to be about, in their unit; the mean starts there.</param>
/// <param name="StandardDeviation">Of a value, in the unit; above 0.</param>
/// <param name="Weight">Of the newest value, above 0 and at most 1.</param>
/// <param name="LimitDeviations">A mean this many of its own standard deviations off the target is an alarm; above 0, 3 as a rule.</param>
/// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4; limits as for a mean of long standing.</remarks>
public sealed record Ewma(double Target, double StandardDeviation, double Weight, double LimitDeviations)
{
    public double StandardDeviation { get; } = Require.Positive(StandardDeviation);

    public double Weight { get; } = Require.Share(Require.Positive(Weight));

    public double LimitDeviations { get; } = Require.Positive(LimitDeviations);

    /// <summary>Distance of the limits from the target, in the unit.</summary>
    public double Limit => LimitDeviations * StandardDeviation * Spread(Weight);

    /// <summary>The mean after one more value.</summary>
    public double Next(double before, double value) => before + Weight * (Require.Finite(value) - before);

    /// <summary>The mean after each value, from the target.</summary>
    public IReadOnlyList<double> Along(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var mean = Target;
        return [.. values.Select(value => mean = Next(mean, value))];
    }

    public bool IsAlarm(double mean) => Math.Abs(mean - Target) > Limit;

    /// <summary>Mean number of values until an alarm, by the integral equation of its run length.</summary>
    /// <param name="weight">Of the newest value, above 0 and at most 1.</param>
    /// <param name="limitDeviations">In standard deviations of the mean.</param>
    /// <param name="shift">Mean of the values off the target, in standard deviations of a value; values are normal and independent.</param>
    /// <remarks>Source: S. V. Crowder, Technometrics 29 (1987) 401.</remarks>
    public static double MeanRun(double weight, double limitDeviations, double shift)
    {
        var limit = Require.Positive(limitDeviations) * Spread(Require.Share(Require.Positive(weight)));
        return RunLength.Mean(-limit, limit, 0, (from, to) => Normal.PDF(0, 1, (to - from) / weight + from - shift) / weight, _ => (0, 0));
    }

    /// <summary>Standard deviation of the mean over that of a value: √(λ/(2 − λ)).</summary>
    static double Spread(double weight) => Math.Sqrt(weight / (2 - weight));
}
