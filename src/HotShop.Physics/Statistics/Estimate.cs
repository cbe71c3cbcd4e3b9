namespace HotShop.Physics.Statistics;

/// <summary>A value with its standard uncertainty, in the value's unit. Operators take their operands as independent.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), clauses 4 to 6. An error common to both operands, as one meter's, must not be combined
/// by these operators: see <see cref="Uncertainty.Budget"/> and <see cref="Uncertainty.CommonAndOwn"/>.</remarks>
public readonly record struct Estimate(double Value, double StandardUncertainty)
{
    // Kept as a difference, so that an estimate made of value and standard uncertainty alone is normal.
    readonly double factorBeyondNormal;

    Estimate(double value, double standardUncertainty, double factorBeyondNormal) : this(value, standardUncertainty) =>
        this.factorBeyondNormal = factorBeyondNormal;

    /// <summary>Half of the 95 % interval in standard uncertainties: 1.96, the normal's, unless the shape of the errors is known.</summary>
    public double CoverageFactor95 => Quantiles.Normal95 + factorBeyondNormal;

    /// <summary>Half of the 95 % interval, in the value's unit.</summary>
    public double HalfWidth95 => CoverageFactor95 * StandardUncertainty;

    /// <summary>Lower end of the 95 % interval.</summary>
    public double Low95 => Value - HalfWidth95;

    /// <summary>Upper end of the 95 % interval.</summary>
    public double High95 => Value + HalfWidth95;

    /// <summary>The same with the half-width of a 95 % interval that is not the normal's, in the value's unit.</summary>
    /// <remarks>Operators keep it where one operand is exact, and give the normal's where both are uncertain: that covers a little more than 95 %. A
    /// <see cref="Uncertainty.Budget"/> keeps the shapes.</remarks>
    public Estimate WithHalfWidth95(double halfWidth) =>
        StandardUncertainty == 0 ? this : new(Value, StandardUncertainty, Require.NotNegative(halfWidth) / StandardUncertainty - Quantiles.Normal95);

    /// <summary>The same where few values made it: a standard uncertainty of which the normal's factor makes Student's half-width, for further sums.</summary>
    public Estimate WidenedByStudent(double degreesOfFreedom) =>
        this with { StandardUncertainty = StandardUncertainty * Quantiles.TwoSided(Quantiles.Level, degreesOfFreedom) / Quantiles.Normal95 };

    /// <summary>Standard uncertainty over the value's size; 0 of 0 counts as 0.</summary>
    public double RelativeUncertainty => StandardUncertainty == 0 ? 0 : StandardUncertainty / Math.Abs(Value);

    public static Estimate Exact(double value) => new(value, 0);

    /// <summary>A value of which only limits ± are known: standard uncertainty a/√3, and 95 % of the limits as the 95 % interval.</summary>
    public static Estimate WithinLimits(double value, double halfWidth) =>
        new Estimate(value, Require.NotNegative(halfWidth) / Math.Sqrt(3)).WithHalfWidth95(Quantiles.Level * halfWidth);

    /// <summary>A value with a relative standard uncertainty.</summary>
    public static Estimate Relative(double value, double relative) => new(value, Math.Abs(value) * Require.NotNegative(relative));

    public static Estimate operator +(Estimate a, Estimate b) => Together(a.Value + b.Value, a, 1, b, 1);

    public static Estimate operator -(Estimate a, Estimate b) => Together(a.Value - b.Value, a, 1, b, 1);

    public static Estimate operator *(Estimate a, Estimate b) => Together(a.Value * b.Value, a, b.Value, b, a.Value);

    public static Estimate operator /(Estimate a, Estimate b) => Together(a.Value / b.Value, a, 1 / b.Value, b, a.Value / b.Value / b.Value);

    public static Estimate Add(Estimate a, Estimate b) => a + b;

    public static Estimate Subtract(Estimate a, Estimate b) => a - b;

    public static Estimate Multiply(Estimate a, Estimate b) => a * b;

    public static Estimate Divide(Estimate a, Estimate b) => a / b;

    static Estimate Together(double value, Estimate a, double sensitivityA, Estimate b, double sensitivityB) =>
        new(value, double.Hypot(a.StandardUncertainty * sensitivityA, b.StandardUncertainty * sensitivityB),
            a.StandardUncertainty == 0 ? b.factorBeyondNormal : b.StandardUncertainty == 0 ? a.factorBeyondNormal : 0);
}
