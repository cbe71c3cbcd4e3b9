using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;

namespace HotShop.Physics.FurnaceHeat;

/// <summary>How much of the fuel ends in the glass.</summary>
public static class MeltingEfficiency
{
    /// <summary>Heat the glass took up over fuel burnt, as a share; usual for pot furnaces 0.03 to 0.2 of all fuel, for large tanks 0.3 to 0.6.</summary>
    /// <param name="glassKilowattHours">Theoretical heat of what was melted.</param>
    /// <param name="burntKilowattHours">Gross, in the same time; above 0.</param>
    /// <remarks>The two are measured apart, so their uncertainties are independent.</remarks>
    public static Estimate Of(Estimate glassKilowattHours, Estimate burntKilowattHours)
    {
        Require.Positive(burntKilowattHours.Value);
        return glassKilowattHours / burntKilowattHours;
    }

    /// <summary>Specific energy as works state it, GJ per tonne; a kWh/kg is 3.6 of it.</summary>
    public static double GigajoulesPerTonne(double kilowattHoursPerKilogram) => kilowattHoursPerKilogram * EnergyUnits.MegajoulesPerKilowattHour;

    /// <summary>kWh per kilogram of a specific energy in GJ per tonne.</summary>
    public static double KilowattHoursPerKilogram(double gigajoulesPerTonne) => gigajoulesPerTonne / EnergyUnits.MegajoulesPerKilowattHour;

    /// <summary>kWh per kilogram of a specific energy in million Btu per short ton of 2000 lb.</summary>
    public static double KilowattHoursPerKilogramOfMillionBtuPerShortTon(double millionBtuPerShortTon) =>
        millionBtuPerShortTon * EnergyUnits.JoulesPerBtu / EnergyUnits.MegajoulesPerKilowattHour / (2000 * KilogramsPerPound);

    /// <summary>Exact by definition.</summary>
    const double KilogramsPerPound = 0.45359237;
}
