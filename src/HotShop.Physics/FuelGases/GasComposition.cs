using System.Globalization;

namespace HotShop.Physics.FuelGases;

/// <summary>A composition as somebody wrote it, read: the mixture, or what is wrong and what to write instead.</summary>
/// <param name="Mixture">Null where there is a problem.</param>
/// <param name="Problem">What came.</param>
/// <param name="Advice">What to write.</param>
public sealed record GasComposition(GasMixture? Mixture, string? Problem, string? Advice)
{
    /// <summary>How far the percentages may be from 100 together: analyses are printed rounded. The mixture is scaled to 100 %.</summary>
    const double RoundingPercent = 0.1;

    /// <summary>Reads mole percentages by component.</summary>
    /// <param name="percent">By name as in <see cref="GasComponent.All"/>; together 99.9 to 100.1, and something that burns among them.</param>
    public static GasComposition Read(IReadOnlyDictionary<string, double> percent)
    {
        ArgumentNullException.ThrowIfNull(percent);
        var parts = new List<KeyValuePair<GasComponent, double>>();
        foreach (var (name, share) in percent)
        {
            if (GasComponent.Find(name) is not { } component) return Wrong($"'{name}' is no component", $"write {string.Join(", ", GasComponent.All.Select(c => c.Name))}");
            if (!(share >= 0) || !double.IsFinite(share)) return Wrong(Text($"{name} is {share} %"), "write a percentage of 0 or above");
            parts.Add(KeyValuePair.Create(component, share));
        }
        var whole = parts.Sum(p => p.Value);
        if (!(Math.Abs(whole - 100) <= RoundingPercent)) return Wrong(Text($"the parts add up to {whole:0.###} %"), "write mole percentages that add up to 100");
        var mixture = GasMixture.OfParts(parts);
        return mixture.NeedsAir ? new GasComposition(mixture, null, null) : Wrong("this gas does not burn", "write the fuel gas of the bill or the supplier's analysis");
    }

    static GasComposition Wrong(string problem, string advice) => new(null, problem, advice);

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
