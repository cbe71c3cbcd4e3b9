namespace HotShop.Physics.Glass;

/// <summary>The oxides of a glass, scaled to 100 %. Immutable.</summary>
public sealed class GlassComposition
{
    static readonly Dictionary<Oxide, double> MolarMasses =
        Enum.GetValues<Oxide>().ToDictionary(o => o, o => ChemicalFormula.GramsPerMole(o.ToString()));

    GlassComposition(Dictionary<Oxide, double> parts, bool isByWeight)
    {
        var weights = Scaled(isByWeight ? parts : parts.ToDictionary(p => p.Key, p => p.Value * MolarMasses[p.Key]));
        (WeightPercent, MolePercent) = (weights, Scaled(weights.ToDictionary(w => w.Key, w => w.Value / MolarMasses[w.Key])));
    }

    /// <summary>Percent by weight of each oxide present; they add up to 100.</summary>
    public IReadOnlyDictionary<Oxide, double> WeightPercent { get; }

    /// <summary>Percent of moles of each oxide present; they add up to 100.</summary>
    public IReadOnlyDictionary<Oxide, double> MolePercent { get; }

    /// <summary>Mass of a mole of its oxides, g/mol.</summary>
    public double GramsPerMole => MolePercent.Sum(m => m.Value * MolarMasses[m.Key]) / Percent;

    /// <summary>A glass from weights in any unit: they are scaled to 100 %.</summary>
    /// <exception cref="ArgumentException">There is nothing in it, or less than nothing of an oxide.</exception>
    public static GlassComposition OfWeights(IReadOnlyDictionary<Oxide, double> weights) => new(Checked(weights), isByWeight: true);

    /// <summary>A glass from moles, or percents of them: they are scaled to 100 %.</summary>
    /// <exception cref="ArgumentException">There is nothing in it, or less than nothing of an oxide.</exception>
    public static GlassComposition OfMoles(IReadOnlyDictionary<Oxide, double> moles) => new(Checked(moles), isByWeight: false);

    /// <summary>Weight of the oxides that are not among these, in percent.</summary>
    public double WeightPercentBeside(IReadOnlyCollection<Oxide> oxides) => WeightPercent.Where(w => !oxides.Contains(w.Key)).Sum(w => w.Value);

    /// <summary>The same glass without the oxides that are not among these, scaled to 100 % again.</summary>
    public GlassComposition Only(IReadOnlyCollection<Oxide> oxides) => OfWeights(WeightPercent.Where(w => oxides.Contains(w.Key)).ToDictionary());

    const double Percent = 100;

    static Dictionary<Oxide, double> Scaled(Dictionary<Oxide, double> parts)
    {
        var whole = parts.Values.Sum();
        return parts.ToDictionary(p => p.Key, p => Percent * p.Value / whole);
    }

    static Dictionary<Oxide, double> Checked(IReadOnlyDictionary<Oxide, double> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        foreach (var part in parts.Values) Require.NotNegative(part);
        var present = parts.Where(p => p.Value > 0).ToDictionary();
        return present.Count > 0 ? present : throw new ArgumentException("a glass needs an oxide", nameof(parts));
    }
}
