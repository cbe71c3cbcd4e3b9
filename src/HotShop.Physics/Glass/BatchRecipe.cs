namespace HotShop.Physics.Glass;

/// <summary>A batch by its raw materials: the glass it makes, and what leaves as gas. Cullet in a recipe is glass already and belongs
/// to the charge, not here.</summary>
public sealed class BatchRecipe
{
    readonly List<(RawMaterial Material, double Kilograms)> parts;

    /// <param name="kilograms">Of each raw material; parts or percents serve as well, then masses below are in the same unit.</param>
    /// <exception cref="ArgumentException">There is nothing in it, or less than nothing of a material.</exception>
    public BatchRecipe(IReadOnlyDictionary<RawMaterial, double> kilograms)
    {
        ArgumentNullException.ThrowIfNull(kilograms);
        parts = [.. kilograms.Select(k => (k.Key, Require.NotNegative(k.Value))).Where(p => p.Item2 > 0)];
        if (parts.Count == 0) throw new ArgumentException("a batch needs a raw material", nameof(kilograms));
        var oxides = parts.SelectMany(p => p.Material.OxidesPerKilogram.Select(o => (o.Key, Kilograms: o.Value * p.Kilograms)));
        Composition = GlassComposition.OfWeights(oxides.GroupBy(o => o.Key).ToDictionary(g => g.Key, g => g.Sum(o => o.Kilograms)));
    }

    /// <summary>Of the glass it makes.</summary>
    public GlassComposition Composition { get; }

    /// <summary>As weighed, kg.</summary>
    public double Kilograms => parts.Sum(p => p.Kilograms);

    /// <summary>Glass it leaves, kg.</summary>
    public double GlassKilograms => parts.Sum(p => p.Kilograms * p.Material.Yield);

    /// <summary>kg of glass per kg of batch.</summary>
    public double Yield => GlassKilograms / Kilograms;

    /// <summary>Given off by formula, kg; see <see cref="RawMaterial.GasesPerKilogram"/>.</summary>
    public IReadOnlyDictionary<string, double> GasKilograms => parts.SelectMany(p => p.Material.GasesPerKilogram.Select(g => (g.Key, Kilograms: g.Value * p.Kilograms)))
        .GroupBy(g => g.Key).ToDictionary(g => g.Key, g => g.Sum(x => x.Kilograms));

    /// <summary>Carbon dioxide from its carbonates, kg; the flame's own comes on top.</summary>
    public double CarbonDioxideKilograms => GasKilograms.GetValueOrDefault("CO2");
}
