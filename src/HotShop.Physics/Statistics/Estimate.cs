namespace HotShop.Physics.Statistics;

/// <summary>A value with its standard uncertainty, in the value's unit. Operators take their operands as independent.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), clauses 4 to 6. An error common to both operands, as one meter's, must not be combined
/// by these operators.</remarks>
public readonly record struct Estimate(double Value, double StandardUncertainty)
{
    /// <summary>Lower end of the 95 % interval (normal).</summary>
    public double Low95 => Value - Quantiles.Normal95 * StandardUncertainty;

    /// <summary>Upper end of the 95 % interval (normal).</summary>
    public double High95 => Value + Quantiles.Normal95 * StandardUncertainty;

    /// <summary>Standard uncertainty over the value's size; 0 of 0 counts as 0.</summary>
    public double RelativeUncertainty => StandardUncertainty == 0 ? 0 : StandardUncertainty / Math.Abs(Value);

    public static Estimate Exact(double value) => new(value, 0);

    /// <summary>A value of which only limits ± are known: standard uncertainty a/√3.</summary>
    public static Estimate WithinLimits(double value, double halfWidth) => new(value, Require.NotNegative(halfWidth) / Math.Sqrt(3));

    /// <summary>A value with a relative standard uncertainty.</summary>
    public static Estimate Relative(double value, double relative) => new(value, Math.Abs(value) * Require.NotNegative(relative));

    public static Estimate operator +(Estimate a, Estimate b) =>
        new(a.Value + b.Value, double.Hypot(a.StandardUncertainty, b.StandardUncertainty));

    public static Estimate operator -(Estimate a, Estimate b) =>
        new(a.Value - b.Value, double.Hypot(a.StandardUncertainty, b.StandardUncertainty));

    public static Estimate operator *(Estimate a, Estimate b) =>
        new(a.Value * b.Value, double.Hypot(a.StandardUncertainty * b.Value, b.StandardUncertainty * a.Value));

    public static Estimate operator /(Estimate a, Estimate b) =>
        new(a.Value / b.Value, double.Hypot(a.StandardUncertainty, b.StandardUncertainty * a.Value / b.Value) / Math.Abs(b.Value));

    public static Estimate Add(Estimate a, Estimate b) => a + b;

    public static Estimate Subtract(Estimate a, Estimate b) => a - b;

    public static Estimate Multiply(Estimate a, Estimate b) => a * b;

    public static Estimate Divide(Estimate a, Estimate b) => a / b;
}
