using HotShop.Physics.Statistics;
using MathNet.Numerics.Random;

namespace HotShop.Physics.Uncertainty;

/// <summary>What a model's result is spread over when its inputs are drawn from their distributions.</summary>
/// <remarks>Source: JCGM 101:2008, clauses 5 to 7. Any model, however bent; the check of <see cref="Budget"/>, which takes it as straight.</remarks>
public sealed class MonteCarlo
{
    readonly double[] sorted;

    MonteCarlo(double[] results)
    {
        sorted = results;
        Mean = results.Average();
        StandardUncertainty = MathNet.Numerics.Statistics.Statistics.StandardDeviation(results);
        Array.Sort(sorted);
    }

    public double Mean { get; }

    public double StandardUncertainty { get; }

    /// <summary>Draws the inputs, independent of each other, and works the model out each time.</summary>
    /// <param name="inputs">Value of each input, and its error; the sensitivity of a contribution is left to the model.</param>
    /// <param name="model">From the inputs in their order; it must not keep the list.</param>
    /// <param name="trials">2 or more; a million gives the half-width of an interval to two or three digits.</param>
    /// <param name="seed">The same seed draws the same.</param>
    public static MonteCarlo Of(IReadOnlyList<(double Value, Contribution Error)> inputs, Func<IReadOnlyList<double>, double> model, int trials, int seed)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 2);
        var random = new MersenneTwister(seed);
        var draw = new double[inputs.Count];
        var results = new double[trials];
        for (var trial = 0; trial < trials; trial++)
        {
            for (var i = 0; i < draw.Length; i++) draw[i] = inputs[i].Value + inputs[i].Error.Draw(random);
            results[trial] = model(draw);
        }
        return new MonteCarlo(results);
    }

    /// <summary>Interval with as much probability below it as above.</summary>
    /// <param name="probability">Inside the interval, above 0 and below 1.</param>
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
        probability is > 0 and < 1 ? (int)(probability * sorted.Length) : throw new ArgumentOutOfRangeException(nameof(probability), probability, "expected a probability above 0 and below 1");
}
