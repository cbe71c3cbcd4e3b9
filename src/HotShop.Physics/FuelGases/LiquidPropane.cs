using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

/// <summary>Propane as it is sold: by the kilogram, the litre or the gallon of liquid. Gross energy of the vapour that it becomes.</summary>
/// <remarks>Commercial propane differs; outside the United States it may hold tens of per cent of butane (common practice): take the supplier's figure.</remarks>
public static class LiquidPropane
{
    /// <summary>Million Btu gross in a barrel. Source: 40 CFR 98 table NN-1.</summary>
    const double MillionBtuPerBarrel = 3.84;

    /// <summary>By definition.</summary>
    const double GallonsPerBarrel = 42;

    /// <summary>kWh gross in a US gallon of liquid at 60 °F, 26.8. A meter on a truck that compensates counts such gallons.</summary>
    public const double KilowattHoursPerGallon = MillionBtuPerBarrel * EnergyUnits.KilowattHoursPerMillionBtu / GallonsPerBarrel;

    /// <summary>kWh gross in a litre of liquid at 60 °F, 7.08.</summary>
    public const double KilowattHoursPerLitre = KilowattHoursPerGallon / EnergyUnits.LitresPerGallon;

    /// <summary>kWh gross in a kilogram, 13.98. Source: ISO 6976:2016, burning at 25 °C.</summary>
    public static double KilowattHoursPerKilogram { get; } =
        GasProfile.Propane.Mixture.GrossMegajoulesPerKilogram(ReferenceTemperature.Celsius25) / EnergyUnits.MegajoulesPerKilowattHour;

    /// <summary>kWh gross in a pound, 6.34.</summary>
    public static double KilowattHoursPerPound { get; } = KilowattHoursPerKilogram * EnergyUnits.KilogramsPerPound;
}
