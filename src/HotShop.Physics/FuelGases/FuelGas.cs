using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

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
    /// <summary>A lean pipeline gas, for when the supplier's figure is not known yet.</summary>
    public static FuelGas NaturalGas { get; } = GasProfile.NaturalGas.At(GasReference.Iso13443);

    /// <summary>Pure propane vapour.</summary>
    public static FuelGas Propane { get; } = GasProfile.Propane.At(GasReference.Iso13443);

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
