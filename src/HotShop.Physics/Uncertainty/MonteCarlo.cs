using HotShop.Physics.Statistics;
using MathNet.Numerics.Random;

namespace HotShop.Physics.Uncertainty;

/// <summary>What a model's result is spread over when its inputs are drawn from their distributions.</summary>
/// <remarks>Source: JCGM 101:2008, clauses 5 to 7. Any model, however bent; the check of <see cref="Budget"/>, which takes it as straight.</remarks>
public static class MonteCarlo
{
    /// <summary>Draws the inputs, independent of each other, and works the model out each time.</summary>
    /// <param name="inputs">Value of each input, and its error; the sensitivity of a contribution is left to the model.</param>
    /// <param name="model">From the inputs in their order; it must not keep the list.</param>
    /// <param name="trials">Two or more; a million gives the half-width of an interval to two or three digits.</param>
    /// <param name="seed">The same seed draws the same.</param>
    public static Draws Of(IReadOnlyList<(double Value, Contribution Error)> inputs, Func<IReadOnlyList<double>, double> model, int trials, int seed)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(model);
        var random = new MersenneTwister(seed);
        var draw = new double[inputs.Count];
        var results = new double[trials];
        for (var trial = 0; trial < trials; trial++)
        {
            for (var i = 0; i < draw.Length; i++) draw[i] = inputs[i].Value + inputs[i].Error.Draw(random);
            results[trial] = model(draw);
        }
        return new Draws(results);
    }
}
