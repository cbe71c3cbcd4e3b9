namespace HotShop.Physics.Glass;

/// <summary>A raw material of batch: which oxides it leaves in the glass, and what it gives off.</summary>
public sealed class RawMaterial
{
    static readonly Lazy<RawMaterialTable> Table = new(() => EmbeddedJson.Read<RawMaterialTable>("Glass.raw-materials.json"));
    static readonly Lazy<IReadOnlyList<RawMaterial>> Known = new(() => [.. Table.Value.Materials.Select(m => new RawMaterial(m.Key, m.Value))]);

    RawMaterial(string name, RawMaterialRow row)
    {
        var grams = ChemicalFormula.GramsPerMole(row.Formula);
        (Name, Formula) = (name, row.Formula);
        OxidesPerKilogram = row.Leaves.ToDictionary(l => l.Key, l => l.Value * ChemicalFormula.GramsPerMole(l.Key.ToString()) / grams);
        GasesPerKilogram = (row.GivesOff ?? []).ToDictionary(g => g.Key, g => g.Value * ChemicalFormula.GramsPerMole(g.Key) / grams);
    }

    /// <summary>All that are known.</summary>
    public static IReadOnlyList<RawMaterial> All => Known.Value;

    /// <summary>As the trade calls it.</summary>
    public string Name { get; }

    /// <summary>Of the pure substance.</summary>
    public string Formula { get; }

    /// <summary>kg of each oxide that stays, per kg.</summary>
    public IReadOnlyDictionary<Oxide, double> OxidesPerKilogram { get; }

    /// <summary>kg given off per kg, by formula: CO2, H2O, and the oxides of nitrogen and sulphur as they are bound.</summary>
    public IReadOnlyDictionary<string, double> GasesPerKilogram { get; }

    /// <summary>kg of glass that a kilogram leaves. Sodium, boron and lead also evaporate a little, which is not in it.</summary>
    public double Yield => OxidesPerKilogram.Values.Sum();

    /// <summary>The material of a name, whatever its case; <see langword="null"/> when unknown.</summary>
    public static RawMaterial? Named(string name) => All.FirstOrDefault(m => string.Equals(m.Name, name, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The stored raw materials.</summary>
internal sealed record RawMaterialTable(string Source, string Licence, Dictionary<string, RawMaterialRow> Materials);

internal sealed record RawMaterialRow(string Formula, Dictionary<Oxide, double> Leaves, Dictionary<string, double>? GivesOff);
