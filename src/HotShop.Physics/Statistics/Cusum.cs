using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>Sums on both sides of a target that forgive a little each time: they find a small lasting change sooner than any single value does.</summary>
/// <param name="Target">What values are expected to be about, in their unit.</param>
/// <param name="Allowance">Forgiven each time, in the unit; as a rule half of the change that matters. 0 or above.</param>
/// <param name="Limit">A sum above it is an alarm, in the unit; above 0. Four to five standard deviations as a rule.</param>
/// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3 (tabular form). Values should not remember their neighbours.</remarks>
public sealed record Cusum(double Target, double Allowance, double Limit)
{
    public double Allowance { get; } = Require.NotNegative(Allowance);

    public double Limit { get; } = Require.Positive(Limit);

    /// <summary>The sums after one more value.</summary>
    public CusumSums Next(CusumSums before, double value) => new(
        Math.Max(0, before.Above + Require.Finite(value) - Target - Allowance),
        Math.Max(0, before.Below + Target - value - Allowance));

    /// <summary>The sums after each value, from nothing.</summary>
    public IReadOnlyList<CusumSums> Along(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var sums = default(CusumSums);
        return [.. values.Select(value => sums = Next(sums, value))];
    }

    /// <summary>Whether a sum has passed the limit.</summary>
    public bool IsAlarm(CusumSums sums) => sums.Above > Limit || sums.Below > Limit;

    /// <summary>Mean number of values until the upper sum alarms, by the integral equation of its run length.</summary>
    /// <param name="allowance">In standard deviations of a value, 0 or above.</param>
    /// <param name="limit">In standard deviations, above 0.</param>
    /// <param name="shift">Mean of the values above the target, in standard deviations; values are normal and independent.</param>
    /// <param name="start">The sum before the first value, 0 to the limit: half of it finds an old fault sooner.</param>
    /// <remarks>Source: E. S. Page, Biometrika 41 (1954) 100; solved as L. C. Vance, J. Quality Technology 18 (1986) 189.</remarks>
    public static double MeanRun(double allowance, double limit, double shift, double start = 0)
    {
        Require.NotNegative(allowance);
        // From a sum z a value takes it to x with density φ(x + allowance − z − shift), or back to 0 with what lies below.
        return RunLength.Mean(0, Require.Positive(limit), start,
            (from, to) => Normal.PDF(0, 1, to + allowance - from - shift), from => (0, Normal.CDF(0, 1, allowance - from - shift)));
    }

    /// <summary>Mean number of values until either sum alarms.</summary>
    /// <inheritdoc cref="MeanRun"/>
    /// <remarks>Source: J. M. Lucas and R. B. Crosier, Technometrics 24 (1982) 199, appendix.</remarks>
    public static double MeanRunTwoSided(double allowance, double limit, double shift, double start = 0)
    {
        var (above, below) = (MeanRun(allowance, limit, shift), MeanRun(allowance, limit, -shift));
        return (Share(shift, above) + Share(-shift, below) - 1) / (1 / above + 1 / below);

        // A sum that never alarms does so wherever it starts.
        double Share(double to, double fromNothing) => double.IsInfinity(fromNothing) ? 1 : MeanRun(allowance, limit, to, start) / fromNothing;
    }
}

/// <summary>What has added up above the target and below it, 0 or above, in the values' unit.</summary>
public readonly record struct CusumSums(double Above, double Below);
