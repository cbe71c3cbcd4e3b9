namespace HotShop.Physics.Pot;

/// <summary>What is charged into the pot, and how much of it stays as glass.</summary>
/// <param name="Name">As logged and shown.</param>
/// <param name="GlassYield">kg of glass per kg charged, above 0 and at most 1.</param>
/// <param name="RelativeUncertainty">Standard uncertainty of a charge's glass, weighing and yield together, as a share of
/// it.</param>
/// <param name="NeedsReaction">Whether melting it drives off gas, which takes heat beyond that of warming glass.</param>
public sealed record ChargeMaterial(string Name, double GlassYield, double RelativeUncertainty, bool NeedsReaction)
{
    /// <summary>Crushed or chunk glass: stays whole.</summary>
    public static ChargeMaterial Cullet { get; } = new("cullet", 1.0, 0.02, NeedsReaction: false);

    /// <summary>Raw mix: 0.85 is common practice; 0.834 and 0.844 follow from the carbonates of two worked recipes (standard
    /// atomic weights). The bag may state it.</summary>
    public static ChargeMaterial Batch { get; } = new("batch", 0.85, 0.03, NeedsReaction: true);

    /// <summary>Glass melted before and quenched: loses moisture at most. Common practice.</summary>
    public static ChargeMaterial Frit { get; } = new("frit", 1.0, 0.02, NeedsReaction: false);

    public static IReadOnlyList<ChargeMaterial> All { get; } = [Cullet, Batch, Frit];

    public double GlassYield { get; init; } = GlassYield is > 0 and <= 1
        ? GlassYield
        : throw new ArgumentOutOfRangeException(nameof(GlassYield), GlassYield, "expected a yield above 0 and at most 1");

    public double RelativeUncertainty { get; init; } = Require.NotNegative(RelativeUncertainty);

    /// <summary>Glass left in the pot once melted, kg.</summary>
    public double GlassKilograms(double chargedKilograms) => Require.NotNegative(chargedKilograms) * GlassYield;

    /// <summary>The material of a name, whatever its case; <see langword="null"/> when unknown.</summary>
    public static ChargeMaterial? Named(string name) =>
        All.FirstOrDefault(m => string.Equals(m.Name, name, StringComparison.OrdinalIgnoreCase));
}
