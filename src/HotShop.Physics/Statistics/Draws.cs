namespace HotShop.Physics.Statistics;

/// <summary>Results drawn many times: what they are spread over.</summary>
public sealed class Draws
{
    readonly double[] sorted;

    /// <param name="results">Two or more, finite.</param>
    public Draws(IReadOnlyList<double> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        ArgumentOutOfRangeException.ThrowIfLessThan(results.Count, 2);
        sorted = [.. results.Order()];
        Mean = sorted.Average();
        StandardUncertainty = MathNet.Numerics.Statistics.Statistics.StandardDeviation(sorted);
    }

    public double Mean { get; }

    /// <summary>Standard deviation of the results.</summary>
    public double StandardUncertainty { get; }

    /// <summary>Interval with as much probability below it as above.</summary>
    /// <param name="probability">Inside the interval, above 0 and below 1.</param>
    /// <remarks>Source: JCGM 101:2008, 7.7.</remarks>
    public (double Low, double High) Interval(double probability = Quantiles.Level)
    {
        var held = Held(probability);
        var below = (sorted.Length - held) / 2;
        return (sorted[below], sorted[below + held]);
    }

    /// <summary>Shortest interval with a probability.</summary>
    /// <inheritdoc cref="Interval"/>
    public (double Low, double High) ShortestInterval(double probability = Quantiles.Level)
    {
        var held = Held(probability);
        var best = Enumerable.Range(0, sorted.Length - held).MinBy(i => sorted[i + held] - sorted[i]);
        return (sorted[best], sorted[best + held]);
    }

    int Held(double probability) =>
        probability is > 0 and < 1
            ? (int)(probability * sorted.Length)
            : throw new ArgumentOutOfRangeException(nameof(probability), probability, "expected a probability above 0 and below 1");
}
