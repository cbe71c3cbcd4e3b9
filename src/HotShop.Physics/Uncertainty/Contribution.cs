using HotShop.Physics.Statistics;
using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Uncertainty;

/// <summary>One reason why a result may be off.</summary>
/// <param name="Name">As shown to people: "meter class".</param>
/// <param name="StandardUncertainty">Of the input, in the input's unit; 0 or above.</param>
/// <param name="Shape">How its error is spread.</param>
/// <param name="Sensitivity">What the result changes by, per unit of the input; signed, in the result's unit per the input's.</param>
/// <param name="DegreesOfFreedom">Of <paramref name="StandardUncertainty"/>; above 0, infinite where it is taken as known.</param>
/// <remarks>Source: JCGM 100:2008 (GUM), 4.2 for readings, 4.3 for what is known otherwise.</remarks>
public sealed record Contribution(
    string Name, double StandardUncertainty, Shape Shape = Shape.Normal, double Sensitivity = 1, double DegreesOfFreedom = double.PositiveInfinity)
{
    public double StandardUncertainty { get; init; } = Require.NotNegative(StandardUncertainty);

    public double Sensitivity { get; init; } = Require.Finite(Sensitivity);

    public double DegreesOfFreedom { get; init; } = DegreesOfFreedom > 0
        ? DegreesOfFreedom
        : throw new ArgumentOutOfRangeException(nameof(DegreesOfFreedom), DegreesOfFreedom, "expected degrees of freedom above 0");

    /// <summary>The same error every time, as a meter's class or a month's heating value: in sums and differences it is one error, told by its name.</summary>
    public bool IsCommon { get; init; }

    /// <summary>What it does to the result: sensitivity times standard uncertainty, signed, in the result's unit.</summary>
    public double Effect => Sensitivity * StandardUncertainty;

    /// <summary>Limits ± of which nothing else is known: standard uncertainty a/√3.</summary>
    public static Contribution Rectangular(string name, double halfWidth, double sensitivity = 1) =>
        new(name, Estimate.WithinLimits(0, halfWidth).StandardUncertainty, Shape.Rectangular, sensitivity);

    /// <summary>Limits ± of an error that is the same every time.</summary>
    public static Contribution CommonWithin(string name, double halfWidth, double sensitivity = 1) => Rectangular(name, halfWidth, sensitivity) with { IsCommon = true };

    /// <summary>Limits ± with the middle likelier than the ends: standard uncertainty a/√6.</summary>
    public static Contribution Triangular(string name, double halfWidth, double sensitivity = 1) =>
        new(name, Require.NotNegative(halfWidth) / Math.Sqrt(6), Shape.Triangular, sensitivity);

    /// <summary>A display or scale that shows steps: half a step to either side, standard uncertainty q/√12.</summary>
    public static Contribution Resolution(string name, double step, double sensitivity = 1) => Rectangular(name, step / 2, sensitivity);

    /// <summary>An expanded uncertainty U as a certificate states it, with its coverage factor k: standard uncertainty U/k.</summary>
    public static Contribution Certificate(
        string name, double expanded, double coverageFactor, double sensitivity = 1, double degreesOfFreedom = double.PositiveInfinity) =>
        new(name, expanded / Require.Positive(coverageFactor), Shape.Normal, sensitivity, degreesOfFreedom);

    /// <summary>Mean of repeated readings: standard uncertainty s/√n with n − 1 degrees of freedom.</summary>
    /// <param name="name">As shown to people.</param>
    /// <param name="readings">Two or more.</param>
    /// <param name="sensitivity">What the result changes by, per unit of the readings.</param>
    public static Contribution Mean(string name, IReadOnlyList<double> readings, double sensitivity = 1)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count < 2) throw new ArgumentException("a scatter takes two readings or more", nameof(readings));
        return new(name, MathNet.Numerics.Statistics.Statistics.StandardDeviation(readings) / Math.Sqrt(readings.Count), Shape.Normal, sensitivity, readings.Count - 1);
    }

    /// <summary>An error of the input, drawn from its distribution.</summary>
    /// <remarks>Source: JCGM 101:2008, 6.4. With few degrees of freedom a scaled Student t, wider than its standard uncertainty says.</remarks>
    public double Draw(Random random) => Shape switch
    {
        Shape.Rectangular => Drawn(random) * Math.Sqrt(3),
        Shape.Triangular => (Drawn(random) + Drawn(random)) * Math.Sqrt(3.0 / 2),
        _ when double.IsPositiveInfinity(DegreesOfFreedom) => Normal.Sample(random, 0, StandardUncertainty),
        _ => StudentT.Sample(random, 0, StandardUncertainty, DegreesOfFreedom),
    };

    /// <summary>Alike between minus and plus the standard uncertainty.</summary>
    double Drawn(Random random) => StandardUncertainty * (2 * random.NextDouble() - 1);
}
