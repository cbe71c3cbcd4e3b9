using MathNet.Numerics.Random;

namespace HotShop.Physics.Statistics;

/// <summary>How sure a figure of a sample is when nothing is known of the sample's distribution: the sample is drawn from again and again, with
/// replacement.</summary>
/// <remarks>Source: B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap, 1993, chapters 6 and 13 (percentile interval). The cases must be
/// independent: hours that remember their neighbours are drawn by the day. With fewer than about ten cases the interval is too narrow.</remarks>
public static class Bootstrap
{
    /// <summary>Draws of a figure.</summary>
    /// <param name="sample">One case or more; a case may be a pair.</param>
    /// <param name="figure">Of a drawn sample, such as its median; it must not keep the list.</param>
    /// <param name="draws">Two or more; a standard error takes 200, an interval 2000.</param>
    /// <param name="seed">The same seed draws the same.</param>
    public static Draws Of<T>(IReadOnlyList<T> sample, Func<IReadOnlyList<T>, double> figure, int draws, int seed)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentOutOfRangeException.ThrowIfZero(sample.Count, nameof(sample));
        var random = new MersenneTwister(seed);
        var drawn = new T[sample.Count];
        var results = new double[draws];
        for (var draw = 0; draw < draws; draw++)
        {
            for (var i = 0; i < drawn.Length; i++) drawn[i] = sample[random.Next(sample.Count)];
            results[draw] = figure(drawn);
        }
        return new Draws(results);
    }
}
