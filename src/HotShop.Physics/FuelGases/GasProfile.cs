using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

/// <summary>A gas that has a name. Take the supplier's figures where there are any: pipeline gas differs by some per cent from place to place.</summary>
public sealed class GasProfile
{
    static readonly Dictionary<string, GasProfile> ById = Read();

    GasProfile(string id, string name, GasMixture mixture, double? publishedCarbonDioxide)
    {
        IsCarbonDioxidePublished = publishedCarbonDioxide is not null;
        (Id, Name, Mixture) = (id, name, mixture);
        CarbonDioxideKilogramsPerKilowattHour = publishedCarbonDioxide is { } perMillionBtu
            ? perMillionBtu / EnergyUnits.KilowattHoursPerMillionBtu
            : mixture.CarbonDioxideKilogramsPerGrossKilowattHour;
    }

    public static GasProfile NaturalGas { get; } = ById["natural-gas"];
    public static GasProfile Propane { get; } = ById["propane"];

    public static IReadOnlyCollection<GasProfile> All => ById.Values;

    /// <summary>The profile of an id such as <c>natural-gas</c>; null where there is none.</summary>
    public static GasProfile? Find(string id) => ById.GetValueOrDefault(id);

    public string Id { get; }

    /// <summary>As shown to people.</summary>
    public string Name { get; }
    public GasMixture Mixture { get; }

    /// <summary>kg CO2 per gross kWh: the published factor where there is one, else from the carbon of the composition.</summary>
    public double CarbonDioxideKilogramsPerKilowattHour { get; }

    /// <summary>Whether that factor is the published one of 40 CFR 98 table C-1.</summary>
    public bool IsCarbonDioxidePublished { get; }

    /// <summary>The gas by its cubic metre.</summary>
    public FuelGas At(GasReference reference)
    {
        ArgumentNullException.ThrowIfNull(reference);
        return new FuelGas(Name, Mixture.At(reference).GrossKilowattHoursPerCubicMetre, reference.Volume, CarbonDioxideKilogramsPerKilowattHour);
    }

    static Dictionary<string, GasProfile> Read()
    {
        var rows = EmbeddedJson.Read<GasProfileTable>("FuelGases.gas-profiles.json").Gases;
        return rows.ToDictionary(r => r.Key, r => new GasProfile(r.Key, r.Value.Name, Mixed(r.Value, rows), r.Value.CarbonDioxideKilogramsPerMillionBtu));
    }

    static GasMixture Mixed(GasProfileRow row, Dictionary<string, GasProfileRow> rows) => row switch
    {
        { Pure: { } component } => GasMixture.Pure(GasComponent.Find(component)!),
        { Basis: { } basis } => Mixed(rows[basis], rows).With(GasMixture.Pure(GasComponent.Hydrogen), row.HydrogenPercent / 100),
        _ => GasMixture.OfParts(row.Percent!.Select(p => KeyValuePair.Create(GasComponent.Find(p.Key)!, p.Value))),
    };
}

internal sealed record GasProfileTable(string Source, string Licence, Dictionary<string, GasProfileRow> Gases);

internal sealed record GasProfileRow(
    string Name,
    string? Pure,
    Dictionary<string, double>? Percent,
    string? Basis,
    double HydrogenPercent,
    double? CarbonDioxideKilogramsPerMillionBtu);
