using HotShop.Checks.Gas;
using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Combustion;

/// <summary>Carbon dioxide of burning, per gross energy.</summary>
static class CarbonDioxideChecks
{
    const string Cfr = "40 CFR 98 table C-1 (81 FR 89188, 2016), gross", Carbon = "from the carbon and ISO 6976:2016, computed apart", Ipcc = "IPCC 2006 guidelines, net; from memory";

    public static IEnumerable<Check> All =>
    [
        Check.Printed("natural gas, published factor", "53.06", "kg/MMBtu", Cfr, () => PerMillionBtu(GasProfile.NaturalGas.CarbonDioxideKilogramsPerKilowattHour)),
        Check.Printed("natural gas, published factor per kWh", "0.18105", "kg/(kW.h)", Cfr, () => GasProfile.NaturalGas.CarbonDioxideKilogramsPerKilowattHour),
        Check.Printed("natural gas, published factor per therm", "5.306", "kg/therm", Cfr, () => FuelGas.NaturalGas.CarbonDioxideKilogramsPerKilowattHour * EnergyUnits.KilowattHoursPerTherm),
        Check.Printed("liquid propane, published factor", "62.87", "kg/MMBtu", Cfr, () => PerMillionBtu(GasProfile.Propane.CarbonDioxideKilogramsPerKilowattHour)),
        Check.Printed("liquid propane, published factor per kWh", "0.21452", "kg/(kW.h)", Cfr, () => FuelGas.Propane.CarbonDioxideKilogramsPerKilowattHour),
        new("liquid propane, per gallon", "5.72", "kg", 0.03, Cfr + ", with the heat of its gallon rounded to 0.091 MMBtu", Standing.Read, () => LiquidPropane.KilowattHoursPerGallon * GasProfile.Propane.CarbonDioxideKilogramsPerKilowattHour),
        Check.Printed("butane, published factor", "64.77", "kg/MMBtu", Cfr, () => PerMillionBtu(GasProfile.Find("butane")!.CarbonDioxideKilogramsPerKilowattHour)),
        Check.Printed("methane, from its carbon", "52.1", "kg/MMBtu", Carbon, () => PerMillionBtu(GasProfile.Find("methane")!.CarbonDioxideKilogramsPerKilowattHour), Standing.Computed),
        Check.Printed("methane, from its carbon per kWh", "0.1779", "kg/(kW.h)", Carbon, () => GasProfile.Find("methane")!.CarbonDioxideKilogramsPerKilowattHour, Standing.Computed),
        Check.Printed("propane, from its carbon per kWh", "0.2142", "kg/(kW.h)", Carbon, () => Mixes.Pure("propane").CarbonDioxideKilogramsPerGrossKilowattHour, Standing.Computed),
        // The published factors stand for gas as it is sold.
        FromCarbon("propane", "62.87"), FromCarbon("ethane", "59.60"), FromCarbon("n-butane", "64.77"), FromCarbon("isobutane", "64.94"),
        new("natural gas, lean, from its carbon", "53.06", "kg/MMBtu", 0.02 * 53.06, Cfr, Standing.Read, () => PerMillionBtu(Mixes.Lean.CarbonDioxideKilogramsPerGrossKilowattHour)),
        new("natural gas, lean, from its carbon, per net heat", "56.1", "kg/GJ", 0.01 * 56.1, Ipcc, Standing.Memory, () => PerNetGigajoule(Mixes.Lean)),
        new("mixed petroleum gas, from its carbon, per net heat", "63.1", "kg/GJ", 0.04 * 63.1, Ipcc, Standing.Memory, () => PerNetGigajoule(GasProfile.Find("lpg-70-30")!.Mixture)),
        new("hydrogen", "0", "kg/(kW.h)", 1e-12, "it holds no carbon", Standing.Computed, () => GasProfile.Find("hydrogen")!.CarbonDioxideKilogramsPerKilowattHour),
    ];

    static double PerMillionBtu(double perKilowattHour) => perKilowattHour * EnergyUnits.KilowattHoursPerMillionBtu;

    static Check FromCarbon(string gas, string published) => new(
        $"{gas}, from its carbon", published, "kg/MMBtu", 0.005 * Published.Number(published), Cfr, Standing.Read, () => PerMillionBtu(Mixes.Pure(gas).CarbonDioxideKilogramsPerGrossKilowattHour));

    static double PerNetGigajoule(GasMixture gas) =>
        gas.CarbonDioxideKilogramsPerGrossKilowattHour / EnergyUnits.MegajoulesPerKilowattHour * 1000
        * gas.GrossKilojoulesPerMole(ReferenceTemperature.Celsius25) / gas.NetKilojoulesPerMole(ReferenceTemperature.Celsius25);
}
