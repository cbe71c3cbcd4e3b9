using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums;

/// <summary>A number with how far it may be off: limits ± of which nothing else is known.</summary>
/// <param name="Name">As people call it.</param>
/// <param name="HalfWidth">In the number's unit; 0: exact.</param>
/// <param name="Least">It cannot be below.</param>
/// <param name="Most">It cannot be above.</param>
public sealed record Doubt(string Name, double Value, double HalfWidth, double Least = double.NegativeInfinity, double Most = double.PositiveInfinity)
{
    public static implicit operator double(Doubt doubt) => doubt.Value;

    public double ToDouble() => Value;

    /// <summary>A factor near 1 that stands for what a method itself is in doubt by.</summary>
    public static Doubt Factor(string name, double relative) => new(name, 1, relative);

    public Doubt Times(double exact) => this with { Value = Value * exact, HalfWidth = HalfWidth * Math.Abs(exact), Least = Least * exact, Most = Most * exact };

    /// <summary>A result of numbers in doubt: each is moved to its two limits, the others left, and what that does to the result is its contribution.</summary>
    /// <remarks>Source: JCGM 100:2008 (GUM), 5.1.3 note 2: sensitivities by experiment.</remarks>
    public static Budget Of(Func<IReadOnlyList<double>, double> work, params IReadOnlyList<Doubt> numbers)
    {
        double[] values = [.. numbers.Select(n => n.Value)];
        return new Budget(work(values), [.. numbers.Select((n, i) => Contribution.Rectangular(n.Name, n.HalfWidth * Math.Abs(Slope(n, i)))).Where(c => c.StandardUncertainty > 0)]);

        // The mean slope between the limits: where one of them is cut off, the doubt is as large as ever.
        double Slope(Doubt number, int place) => number.Up > number.Down ? (At(number.Up, place) - At(number.Down, place)) / (number.Up - number.Down) : 0;

        double At(double value, int place)
        {
            double[] moved = [.. values];
            moved[place] = value;
            return work(moved);
        }
    }

    double Up => Math.Min(Most, Value + HalfWidth);

    double Down => Math.Max(Least, Value - HalfWidth);
}
