namespace HotShop.Physics.Energy;

/// <summary>A fuel gas: gross heating value at stated base conditions, and the carbon dioxide of burning it.</summary>
/// <param name="Name">As shown to people.</param>
/// <param name="GrossKilowattHoursPerCubicMetre">Gross (higher) heating value, kWh per m³ at <paramref name="Base"/>; the
/// supplier's bill states it.</param>
/// <param name="Base">Conditions of that cubic metre.</param>
/// <param name="CarbonDioxideKilogramsPerKilowattHour">kg CO2 per gross kWh.</param>
public sealed record FuelGas(
    string Name,
    double GrossKilowattHoursPerCubicMetre,
    BaseConditions Base,
    double CarbonDioxideKilogramsPerKilowattHour)
{
    static readonly Lazy<FuelGasTable> Table = new(() => EmbeddedJson.Read<FuelGasTable>("Energy.fuel-gases.json"));

    /// <summary>A lean pipeline gas, for when the supplier's figure is not known yet.</summary>
    public static FuelGas NaturalGas { get; } = Table.Value["natural-gas"];

    /// <summary>Pure propane vapour.</summary>
    public static FuelGas Propane { get; } = Table.Value["propane"];

    public double GrossKilowattHoursPerCubicMetre { get; init; } = Require.Positive(GrossKilowattHoursPerCubicMetre);

    public double CarbonDioxideKilogramsPerKilowattHour { get; init; } = Require.NotNegative(CarbonDioxideKilogramsPerKilowattHour);

    /// <summary>Gross energy of a volume already at <see cref="Base"/>, kWh.</summary>
    public double GrossKilowattHours(double baseCubicMetres) => baseCubicMetres * GrossKilowattHoursPerCubicMetre;

    /// <summary>Gross energy of a volume as the meter saw it, kWh; see <see cref="GasVolume.ToBase"/>.</summary>
    public double GrossKilowattHours(double lineCubicMetres, double gaugePressurePascals, double atmosphericPascals, double lineCelsius) =>
        GrossKilowattHours(GasVolume.ToBase(lineCubicMetres, gaugePressurePascals, atmosphericPascals, lineCelsius, Base));

    /// <summary>The same gas with the heating value of a bill, in MJ/m³ gross at the given conditions.</summary>
    public FuelGas WithGrossMegajoulesPerCubicMetre(double megajoules, BaseConditions at) =>
        new(Name, EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(megajoules), at, CarbonDioxideKilogramsPerKilowattHour);
}

/// <summary>The stored table of default gases, all at ISO 13443 conditions.</summary>
internal sealed record FuelGasTable(string Source, string Licence, Dictionary<string, FuelGasRow> Gases)
{
    public FuelGas this[string id] => new(
        Gases[id].Name,
        EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(Gases[id].GrossMegajoulesPerCubicMetre),
        BaseConditions.Iso13443,
        Gases[id].CarbonDioxideKilogramsPerGrossKilowattHour);
}

internal sealed record FuelGasRow(string Name, double GrossMegajoulesPerCubicMetre, double CarbonDioxideKilogramsPerGrossKilowattHour);
