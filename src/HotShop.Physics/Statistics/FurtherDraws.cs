namespace HotShop.Physics.Statistics;

/// <summary>What further draws of a kind will be, from those that are known: days to come after days that were, one more cooling after earlier ones.</summary>
public static class FurtherDraws
{
    /// <summary>Sum of further draws, in the draws' unit: their mean so many times, ± t·s·√(m + m²/n) with 95 %.</summary>
    /// <param name="known">n earlier draws, two or more; independent and normal.</param>
    /// <param name="count">How many more, m: 0 or above, whole or not.</param>
    /// <returns>With the interval of Student's t. The standard uncertainty is scaled to it, so that in a sum with others, whose interval is the normal one, the
    /// few draws still count in full.</returns>
    /// <remarks>Prediction interval of a normal sample. The m draws scatter by s·√m, and their mean is known to s/√n each. Source: any text on sampling; for one
    /// draw s·√(1 + 1/n), NIST/SEMATECH e-Handbook of Statistical Methods (from memory).</remarks>
    public static Estimate Sum(IReadOnlyList<double> known, double count)
    {
        ArgumentNullException.ThrowIfNull(known);
        if (known.Count < 2) throw new ArgumentException("a scatter takes two draws or more", nameof(known));
        var deviation = MathNet.Numerics.Statistics.Statistics.StandardDeviation(known);
        var half = Quantiles.TwoSided(Quantiles.Level, known.Count - 1) * deviation * Math.Sqrt(Require.NotNegative(count) + count * count / known.Count);
        return new Estimate(known.Average() * count, half / Quantiles.Normal95);
    }
}
