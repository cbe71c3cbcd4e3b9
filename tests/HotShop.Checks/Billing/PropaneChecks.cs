using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Billing;

/// <summary>Propane by liquid and by weight.</summary>
static class PropaneChecks
{
    const string Cfr = "40 CFR 98 table NN-1: 3.84 MMBtu a barrel of 42 gallons", Iso = "computed from ISO 6976:2016";

    public static IEnumerable<Check> All =>
    [
        Check.Printed("propane, gross per kilogram", "13.98", "kW.h/kg", Iso, () => LiquidPropane.KilowattHoursPerKilogram, Standing.Computed),
        Check.Printed("propane, gross per kilogram in MJ", "50.326", "MJ/kg", Iso, () => LiquidPropane.KilowattHoursPerKilogram * EnergyUnits.MegajoulesPerKilowattHour, Standing.Computed),
        Check.Printed("propane, gross per gallon", "91429", "Btu", Cfr, () => LiquidPropane.KilowattHoursPerGallon / EnergyUnits.KilowattHoursPerMillionBtu * 1e6),
        new("propane, gross per gallon, rounded", "0.091", "MMBtu", 0.0005, "40 CFR 98 table C-1", Standing.Read, () => LiquidPropane.KilowattHoursPerGallon / EnergyUnits.KilowattHoursPerMillionBtu),
        new("propane, gross per gallon, from its weight", "91500", "Btu", 300, "ISO 6976:2016 and 4.24 lb a gallon", Standing.Computed, () => LiquidPropane.KilowattHoursPerPound * 4.24 / EnergyUnits.KilowattHoursPerMillionBtu * 1e6),
        new("propane, gross per gallon, from its vapour", "91500", "Btu", 300, "36.39 ft³ of vapour a gallon", Standing.Read,
            () => 36.39 * Gas.PureGasChecks.Btu(GasProfile.Propane.Mixture.At(Gas.Bases.Gpa).IdealGrossMegajoulesPerCubicMetre)),
        new("propane, gross per litre", "7.09", "kW.h/L", 0.015, "ISO 6976:2016 and 0.507 kg/L at 15 °C (from memory)", Standing.Memory, () => LiquidPropane.KilowattHoursPerLitre),
        new("propane, gross per pound", "21640", "Btu/[lb_av]", 10, "vapour basis, computed from ISO 6976:2016", Standing.Computed, () => LiquidPropane.KilowattHoursPerPound / EnergyUnits.KilowattHoursPerMillionBtu * 1e6),
    ];
}
