using HotShop.Physics.Statistics;

namespace HotShop.Physics.Uncertainty;

/// <summary>
/// A value whose error is partly the same every time, as a meter's class and a month's heating value, and partly its own, as noise: over a sum the first adds
/// up, the second partly cancels.
/// </summary>
/// <param name="Value">In its unit.</param>
/// <param name="Common">Standard uncertainty of the error that all terms share, in the value's unit; signed, as a difference turns it round.</param>
/// <param name="Own">Standard uncertainty of what is this term's alone, 0 or above.</param>
/// <remarks>Source: JCGM 100:2008 (GUM), 5.2.2, correlation 1 within the common part and 0 within the rest. All terms share one common error: where two meters
/// are summed, each has its own sum first, and the meters' sums are added as independent estimates.</remarks>
public readonly record struct CommonAndOwn(double Value, double Common, double Own)
{
    /// <summary>Both parts together, as standard uncertainty.</summary>
    public Estimate Estimate => new(Value, double.Hypot(Common, Own));

    /// <summary>A value with relative standard uncertainties.</summary>
    public static CommonAndOwn Relative(double value, double common, double own = 0) =>
        new(value, value * Require.NotNegative(common), Math.Abs(value) * Require.NotNegative(own));

    public static CommonAndOwn Sum(IEnumerable<CommonAndOwn> terms) => terms.Aggregate(default(CommonAndOwn), Add);

    public static CommonAndOwn operator +(CommonAndOwn a, CommonAndOwn b) => new(a.Value + b.Value, a.Common + b.Common, double.Hypot(a.Own, b.Own));

    public static CommonAndOwn operator -(CommonAndOwn a, CommonAndOwn b) => new(a.Value - b.Value, a.Common - b.Common, double.Hypot(a.Own, b.Own));

    /// <summary>Times a number that is exact.</summary>
    public static CommonAndOwn operator *(CommonAndOwn a, double exact) => new(a.Value * exact, a.Common * exact, a.Own * Math.Abs(exact));

    public static CommonAndOwn Add(CommonAndOwn a, CommonAndOwn b) => a + b;

    public static CommonAndOwn Subtract(CommonAndOwn a, CommonAndOwn b) => a - b;

    public static CommonAndOwn Multiply(CommonAndOwn a, double exact) => a * exact;
}
