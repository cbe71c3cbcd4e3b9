using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace HotShop.Physics.Statistics;

/// <summary>A sum of quantities that was observed.</summary>
/// <param name="Weights">Index of each quantity in it, and what it is multiplied by.</param>
/// <param name="Observed">Its value with the standard uncertainty of the observation alone.</param>
public sealed record ObservedSum(IReadOnlyList<(int Index, double Weight)> Weights, Estimate Observed);

/// <summary>
/// Independent quantities of which something is believed beforehand and some sums are observed; then any other sum of them with its uncertainty. What two
/// sums have in common is told apart as far as the observations differ, and stays uncertain where they do not.
/// </summary>
/// <remarks>Conditional normal distribution, exact for normal quantities. Source: Rasmussen and Williams, Gaussian Processes for Machine Learning, 2006,
/// equation A.6; least squares adjustment with prior values gives the same.</remarks>
public sealed class ObservedSums
{
    readonly IReadOnlyList<Estimate> beliefs;
    readonly List<(int Row, double Weight)>[] rowsOf;
    readonly Cholesky<double>? factor;
    readonly double[] means;
    readonly int count;

    /// <exception cref="ArgumentException">Two observations contradict each other exactly: give each an uncertainty above 0.</exception>
    public ObservedSums(IReadOnlyList<Estimate> beliefs, IReadOnlyList<ObservedSum> sums)
    {
        ArgumentNullException.ThrowIfNull(sums);
        this.beliefs = beliefs ?? throw new ArgumentNullException(nameof(beliefs));
        count = sums.Count;
        means = [.. beliefs.Select(b => b.Value)];
        rowsOf = new List<(int, double)>[beliefs.Count];
        for (var row = 0; row < count; row++)
            foreach (var (index, weight) in sums[row].Weights) (rowsOf[index] ??= []).Add((row, weight));
        if (count == 0) return;

        var covariance = Matrix<double>.Build.Dense(count, count);
        for (var index = 0; index < beliefs.Count; index++)
        {
            var variance = beliefs[index].StandardUncertainty * beliefs[index].StandardUncertainty;
            if (rowsOf[index] is not { } rows || variance == 0) continue;
            foreach (var (a, first) in rows)
                foreach (var (b, second) in rows) covariance[a, b] += variance * first * second;
        }
        var surprise = Vector<double>.Build.Dense(count);
        for (var row = 0; row < count; row++)
        {
            covariance[row, row] += sums[row].Observed.StandardUncertainty * sums[row].Observed.StandardUncertainty;
            surprise[row] = sums[row].Observed.Value - sums[row].Weights.Sum(w => w.Weight * beliefs[w.Index].Value);
        }
        factor = covariance.Cholesky();
        var pull = factor.Solve(surprise);
        for (var index = 0; index < beliefs.Count; index++)
        {
            if (rowsOf[index] is not { } rows) continue;
            var variance = beliefs[index].StandardUncertainty * beliefs[index].StandardUncertainty;
            means[index] += variance * rows.Sum(r => r.Weight * pull[r.Row]);
        }
    }

    /// <summary>Best value of a quantity after the observations.</summary>
    public double Mean(int index) => means[index];

    /// <summary>A sum of the quantities after the observations.</summary>
    public Estimate Of(IEnumerable<(int Index, double Weight)> sum)
    {
        ArgumentNullException.ThrowIfNull(sum);
        double mean = 0, variance = 0;
        var shared = Vector<double>.Build.Dense(Math.Max(1, count));
        foreach (var (index, weight) in sum.GroupBy(s => s.Index, s => s.Weight, (index, weights) => (index, weights.Sum())))
        {
            mean += weight * means[index];
            var own = beliefs[index].StandardUncertainty * beliefs[index].StandardUncertainty * weight;
            variance += own * weight;
            if (rowsOf[index] is { } rows) foreach (var (row, inRow) in rows) shared[row] += own * inRow;
        }
        if (factor is not null) variance -= shared.DotProduct(factor.Solve(shared));
        return new Estimate(mean, Math.Sqrt(Math.Max(0, variance)));
    }
}
