namespace HotShop.Physics.Glass;

/// <summary>What a model says of a glass: its curve, or why it says nothing.</summary>
public abstract record ViscosityAnswer
{
    ViscosityAnswer() { }

    /// <summary>The glass lies within the model's limits.</summary>
    public sealed record Known(ViscosityCurve Curve) : ViscosityAnswer;

    /// <summary>An oxide lies outside the model's limits, or is none of its oxides; the reason names each.</summary>
    public sealed record OutOfRange(string Reason) : ViscosityAnswer;
}

/// <summary>Viscosity from composition: at each of three viscosities the temperature is a polynomial of the oxides.</summary>
public sealed class ViscosityModel
{
    readonly ViscosityModelTable table;
    readonly string unit;
    readonly Func<GlassComposition, IReadOnlyDictionary<Oxide, double>> limited, variables;
    readonly Isokom[] isokoms;

    ViscosityModel(string name, string unit, Func<GlassComposition, IReadOnlyDictionary<Oxide, double>> limited, Func<GlassComposition, IReadOnlyDictionary<Oxide, double>> variables)
    {
        table = EmbeddedJson.Read<ViscosityModelTable>($"Glass.{name}.json");
        (this.unit, this.limited, this.variables) = (unit, limited, variables);
        isokoms = [.. table.Isokoms.Select(i => new Isokom(i))];
    }

    /// <summary>Fluegel, Glass Technol. 48 (2007) 13: from melting to annealing, 9 to 17 °C (standard error).</summary>
    public static ViscosityModel Fluegel2007 { get; } = new("viscosity-fluegel-2007", "mol%", g => g.MolePercent, g => g.MolePercent);

    /// <summary>Lakatos, Johansson and Simmingsköld 1976: from melting to 10^6 dPa·s, 3 to 5 °C (standard deviation); drawn on to
    /// the annealing point it is 15 to 20 °C too high.</summary>
    public static ViscosityModel Lakatos1976 { get; } = new("viscosity-lakatos-1976", "wt%", g => g.WeightPercent, PartsToHundredOfSilica);

    /// <summary>Where the model comes from.</summary>
    public string Source => table.Source;

    /// <summary>The curve through the model's three temperatures.</summary>
    public ViscosityAnswer Of(GlassComposition glass)
    {
        ArgumentNullException.ThrowIfNull(glass);
        var outside = Outside(limited(glass)).ToList();
        if (outside.Count > 0) return new ViscosityAnswer.OutOfRange(string.Join("; ", outside));
        var values = variables(glass);
        return ViscosityCurve.ThroughOrNull(isokoms[0].Point(values), isokoms[1].Point(values), isokoms[2].Point(values)) is { } curve
            ? new ViscosityAnswer.Known(curve)
            : new ViscosityAnswer.OutOfRange("each oxide is within the model's limits, but for all of them together it gives no curve");
    }

    IEnumerable<string> Outside(IReadOnlyDictionary<Oxide, double> percents)
    {
        foreach (var (oxide, least) in table.Least)
            if (percents.GetValueOrDefault(oxide) < least) yield return FormattableString.Invariant($"{oxide} is {percents.GetValueOrDefault(oxide):0.##} {unit}, the model begins at {least}");
        foreach (var (oxide, percent) in percents)
            if (!table.Most.TryGetValue(oxide, out var most)) yield return $"{oxide} is not in the model";
            else if (percent > most) yield return FormattableString.Invariant($"{oxide} is {percent:0.##} {unit}, the model ends at {most}");
    }

    static Dictionary<Oxide, double> PartsToHundredOfSilica(GlassComposition glass) =>
        glass.WeightPercent.ToDictionary(w => w.Key, w => 100 * w.Value / glass.WeightPercent[Oxide.SiO2]);

    /// <summary>One polynomial, its terms taken apart once.</summary>
    sealed class Isokom(IsokomTable table)
    {
        readonly (Oxide[] Product, double Kelvin)[] terms =
            [.. table.TermsKelvin.Select(t => (t.Key.Split(' ').Select(Enum.Parse<Oxide>).ToArray(), t.Value))];

        public ViscosityPoint Point(IReadOnlyDictionary<Oxide, double> values) =>
            new(table.Log10DecipascalSeconds, table.ConstantCelsius + terms.Sum(t => t.Product.Aggregate(t.Kelvin, (product, oxide) => product * values.GetValueOrDefault(oxide))));
    }
}

/// <summary>A stored model: limits of the composition and, for each viscosity, the terms of a temperature; a term's name is the
/// product it multiplies.</summary>
internal sealed record ViscosityModelTable(string Source, string Licence, Dictionary<Oxide, double> Least, Dictionary<Oxide, double> Most, IReadOnlyList<IsokomTable> Isokoms);

internal sealed record IsokomTable(double Log10DecipascalSeconds, double ConstantCelsius, Dictionary<string, double> TermsKelvin);
