using HotShop.Physics.Pot;

namespace HotShop.Physics.Uncertainty;

/// <summary>How well the glass of a charge is known: limits ±, of which nothing else is known. The same scale and the same guess at the yield serve all charges.</summary>
/// <param name="ScalePercent">Of what the scale shows: a platform scale is good to 1 % (common practice).</param>
/// <param name="StatedYieldPercent">Of a yield that somebody stated, and of cullet and frit, of which moisture and dirt take up to 1 % (common practice).</param>
/// <param name="UsualBatchYieldPercent">Of batch of which nobody said what it leaves: recipes differ by 3 % either way from <see cref="ChargeMaterial.Batch"/> (common practice).</param>
public sealed record ChargeDoubts(double ScalePercent = 1, double StatedYieldPercent = 1, double UsualBatchYieldPercent = 3)
{
    public double ScalePercent { get; init; } = Require.NotNegative(ScalePercent);

    public double StatedYieldPercent { get; init; } = Require.NotNegative(StatedYieldPercent);

    public double UsualBatchYieldPercent { get; init; } = Require.NotNegative(UsualBatchYieldPercent);

    /// <summary>Glass that a charge leaves once melted, kg.</summary>
    /// <param name="chargedKilograms">As weighed, kg.</param>
    /// <param name="material">With the yield that holds for it.</param>
    /// <param name="isYieldStated">Somebody stated this yield: the bag, or a crucible test.</param>
    public Budget Glass(double chargedKilograms, ChargeMaterial material, bool isYieldStated)
    {
        ArgumentNullException.ThrowIfNull(material);
        var charged = GlassBudgets.Weighed(chargedKilograms, stepKilograms: 0, chargedKilograms * ScalePercent / 100);
        return GlassBudgets.Charged(charged, material, material.NeedsReaction && !isYieldStated ? UsualBatchYieldPercent : StatedYieldPercent);
    }
}
