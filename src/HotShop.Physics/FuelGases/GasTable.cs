namespace HotShop.Physics.FuelGases;

/// <summary>The stored tables of ISO 6976.</summary>
internal sealed record GasTable(
    string Source,
    string Licence,
    double GasConstantJoulesPerMoleKelvin,
    double AirMolarMass,
    Dictionary<string, double> AirCompression,
    Dictionary<string, double> WaterVaporisationKilojoulesPerMole,
    Dictionary<string, GasRow> Components)
{
    static readonly Lazy<GasTable> Stored = new(() => EmbeddedJson.Read<GasTable>("FuelGases.iso6976.json"));

    public static GasTable Iso6976 => Stored.Value;
}

internal sealed record GasRow(
    double MolarMass,
    int Carbon,
    int Hydrogen,
    int Oxygen,
    int Nitrogen,
    int Inert,
    Dictionary<string, double> Summation,
    double USummation,
    Dictionary<string, double>? GrossKilojoulesPerMole,
    double UGross);
