using HotShop.Physics.Statistics;
using MathNet.Numerics;

namespace HotShop.Physics.Uncertainty;

/// <summary>
/// A result with all reasons why it may be off: combined standard uncertainty, what each reason has of it, and the 95 % interval.
/// </summary>
/// <remarks>
/// Source: JCGM 100:2008 (GUM): combination 5.1 and 5.2, effective degrees of freedom G.4. The interval is not "two standard uncertainties": the half-width
/// is that of the exact distribution of the sum of the errors, each with its own shape, times Student's t over the normal factor where degrees of freedom
/// are few. With normal errors alone that is the Guide's procedure; with one rectangle ruling it is 1.65 standard uncertainties, not 1.96.
/// First order in the errors: good to a few per cent of the half-width while the uncertainties stay below about a tenth of the values.
/// </remarks>
public sealed class Budget
{
    readonly IReadOnlyList<Correlation> correlations;
    readonly Lazy<double> halfWidth95;

    /// <param name="value">The result, in its unit.</param>
    /// <param name="contributions">Independent of each other.</param>
    public Budget(double value, params IReadOnlyList<Contribution> contributions) : this(value, contributions, []) { }

    Budget(double value, IReadOnlyList<Contribution> contributions, IReadOnlyList<Correlation> correlations)
    {
        Value = Require.Finite(value);
        Contributions = [.. contributions ?? throw new ArgumentNullException(nameof(contributions))];
        this.correlations = correlations;
        Variance = contributions.Sum(c => c.Effect * c.Effect) + correlations.Sum(c => 2 * c.Coefficient * Named(c.First).Effect * Named(c.Second).Effect);
        halfWidth95 = new(() => HalfWidth(Quantiles.Level));
    }

    /// <summary>The result, in its unit.</summary>
    public double Value { get; }

    public IReadOnlyList<Contribution> Contributions { get; }

    double Variance { get; }

    /// <summary>Combined standard uncertainty, in the result's unit.</summary>
    public double StandardUncertainty => Math.Sqrt(Math.Max(0, Variance));

    /// <summary>Welch-Satterthwaite: of the combined standard uncertainty; infinite where every part is taken as known. Correlated parts count as if
    /// they were not.</summary>
    public double EffectiveDegreesOfFreedom
    {
        get
        {
            var parts = Contributions.Sum(c => Math.Pow(c.Effect, 4) / c.DegreesOfFreedom);
            return parts > 0 ? Variance * Variance / parts : double.PositiveInfinity;
        }
    }

    // Rounded down, as the Guide has it (G.4.1); a hair is added first, so that three stay three.
    double WholeDegreesOfFreedom => Math.Floor(EffectiveDegreesOfFreedom * (1 + Precision.SinglePrecision)) is var whole and > 0 ? whole : EffectiveDegreesOfFreedom;

    /// <summary>Half of the interval that holds the true value with 95 %, in the result's unit.</summary>
    public double HalfWidth95 => halfWidth95.Value;

    public double Low95 => Value - HalfWidth95;

    public double High95 => Value + HalfWidth95;

    /// <summary>The value with its standard uncertainty and this budget's 95 % half-width.</summary>
    public Estimate Estimate => new Estimate(Value, StandardUncertainty).WithHalfWidth95(HalfWidth95);

    /// <summary>What each contribution has of the combined variance; the shares add up to 1 where nothing is correlated, largest first.</summary>
    public IReadOnlyList<(Contribution Of, double Share)> Shares =>
        [.. Contributions.Select(c => (c, Variance > 0 ? c.Effect * c.Effect / Variance : 0)).OrderByDescending(s => s.Item2)];

    /// <summary>Half-width of the interval that holds the true value with a probability, in the result's unit.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public double HalfWidth(double probability)
    {
        // What is correlated is taken as normal together: only its variance is known.
        var shaped = Contributions.Where(c => c.Shape != Shape.Normal && c.Effect != 0 && !IsCorrelated(c)).ToList();
        var normal = Variance - shaped.Sum(c => c.Effect * c.Effect);
        var rectangles = new List<double>();
        foreach (var one in shaped)
            if (one.Shape == Shape.Rectangular) rectangles.Add(Math.Abs(one.Effect) * Math.Sqrt(3));
            // A triangle is the sum of two rectangles of half its variance.
            else rectangles.AddRange(Enumerable.Repeat(Math.Abs(one.Effect) * Math.Sqrt(3.0 / 2), 2));
        return ErrorSum.HalfWidth(rectangles, Math.Sqrt(Math.Max(0, normal)), probability)
            * Quantiles.TwoSided(probability, WholeDegreesOfFreedom) / Quantiles.TwoSided(probability);
    }

    /// <summary>The same with two contributions correlated, −1 to 1. An error that two inputs share entirely is better given as one contribution.</summary>
    /// <exception cref="ArgumentException">There are no two contributions of these names.</exception>
    public Budget Correlated(string first, string second, double coefficient)
    {
        if (first == second || Contributions.Count(c => c.Name == first) != 1 || Contributions.Count(c => c.Name == second) != 1)
            throw new ArgumentException($"expected two contributions named {first} and {second}", nameof(second));
        if (coefficient is not (>= -1 and <= 1)) throw new ArgumentOutOfRangeException(nameof(coefficient), coefficient, "expected -1 to 1");
        return new(Value, Contributions, [.. correlations, new(first, second, coefficient)]);
    }

    /// <summary>A result of budgeted parts. A common contribution is one error in all parts that name it, and adds there with its sign; others add in
    /// quadrature.</summary>
    /// <param name="value">The result, in its unit.</param>
    /// <param name="parts">Each with what the result changes by, per unit of the part.</param>
    public static Budget Of(double value, params IEnumerable<(Budget Part, double Sensitivity)> parts)
    {
        var all = (parts ?? throw new ArgumentNullException(nameof(parts)))
            .SelectMany(p => p.Part.Uncorrelated().Select(c => c with { Sensitivity = c.Sensitivity * p.Sensitivity }))
            .GroupBy(c => (c.Name, c.IsCommon)).Select(g => g.Count() == 1 ? g.First() : g.Key.IsCommon ? AsOne(g) : Own([.. g]));
        return new Budget(value, [.. all]);
    }

    /// <summary>Sum, each part once.</summary>
    public static Budget Sum(params IReadOnlyList<Budget> parts) => Of(parts.Sum(p => p.Value), parts.Select(p => (p, 1.0)));

    /// <summary>This less another: what both have in common cancels.</summary>
    public Budget Less(Budget other) => Of(Value - other.Value, (this, 1), (other, -1));

    public Budget Times(Budget other) => Of(Value * other.Value, (this, other.Value), (other, Value));

    /// <summary>This per unit of another, whose value is not 0.</summary>
    public Budget Per(Budget other) => Of(Value / other.Value, (this, 1 / other.Value), (other, -Value / other.Value / other.Value));

    /// <summary>Times a number that is exact, as a change of unit.</summary>
    public Budget Times(double exact) => Of(Value * exact, (this, exact));

    /// <summary>The same with a further contribution.</summary>
    public Budget With(params IEnumerable<Contribution> more) => new(Value, [.. Contributions, .. more], correlations);

    bool IsCorrelated(Contribution contribution) => correlations.Any(c => c.First == contribution.Name || c.Second == contribution.Name);

    Contribution Named(string name) => Contributions.Single(c => c.Name == name);

    IEnumerable<Contribution> Uncorrelated() => correlations.Count == 0
        ? Contributions
        : [new(string.Join(", ", Contributions.Select(c => c.Name)), StandardUncertainty, DegreesOfFreedom: EffectiveDegreesOfFreedom)];

    /// <summary>One error that acts in several places: its effects add with their signs.</summary>
    static Contribution AsOne(IEnumerable<Contribution> places)
    {
        var first = places.First();
        return first with { StandardUncertainty = 1, Sensitivity = places.Sum(p => p.Effect), DegreesOfFreedom = places.Min(p => p.DegreesOfFreedom) };
    }

    /// <summary>Errors alike but independent, one per part: their sum, whose shape is nearly normal.</summary>
    static Contribution Own(Contribution[] errors)
    {
        var sum = new Budget(0, errors);
        return new(errors[0].Name, sum.StandardUncertainty, DegreesOfFreedom: sum.EffectiveDegreesOfFreedom);
    }

    sealed record Correlation(string First, string Second, double Coefficient);
}
