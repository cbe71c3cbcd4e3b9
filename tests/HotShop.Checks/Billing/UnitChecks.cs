using HotShop.Physics.Energy;

namespace HotShop.Checks.Billing;

/// <summary>Units of bills in SI.</summary>
static class UnitChecks
{
    const string Definition = "by definition (NIST SP 811, appendix B)", Si = "computed from the definitions";

    public static IEnumerable<Check> All =>
    [
        Check.Printed("Btu (international table)", "1055.05585262", "J", Definition, () => EnergyUnits.JoulesPerBtu),
        Check.Printed("cubic foot", "0.028316846592", "m3", Definition, () => EnergyUnits.CubicMetresPerCubicFoot),
        Check.Printed("US gallon", "3.785411784", "L", Definition, () => EnergyUnits.LitresPerGallon),
        Check.Printed("pound", "0.45359237", "kg", Definition, () => EnergyUnits.KilogramsPerPound),
        Check.Printed("pound-force per square inch", "6894.757293168", "Pa", Definition, () => EnergyUnits.PascalsPerPsi),
        Check.Printed("inch of water at 4 °C", "249.089", "Pa", "conventional; from memory", () => EnergyUnits.PascalsPerInchOfWater, Standing.Memory),
        Check.Printed("kilowatt hour", "3.6", "MJ", Definition, () => EnergyUnits.MegajoulesPerKilowattHour),
        Check.Printed("therm (100,000 Btu)", "29.307107", "kW.h", Si, () => EnergyUnits.KilowattHoursPerTherm, Standing.Computed),
        Check.Printed("million Btu, dekatherm", "293.07107", "kW.h", Si, () => EnergyUnits.KilowattHoursPerMillionBtu, Standing.Computed),
        new("Btu per cubic foot", "0.0372589458", "MJ/m3", 1e-10, Si, Standing.Computed, () => EnergyUnits.MegajoulesPerKilowattHour * EnergyUnits.KilowattHoursPerCubicMetreOfBtu(1)),
        new("38 MJ/m³ in kWh/m³", "10.5556", "kW.h/m3", 0.00005, Si, Standing.Computed, () => EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(38)),
        new("hundred cubic feet", "2.8316847", "m3", 0.00000005, Si, Standing.Computed, () => 100 * EnergyUnits.CubicMetresPerCubicFoot),
        Check.Printed("psia of the base of interstate tariffs", "101.5598", "kPa", "40 CFR 98.405: 14.73 psia", () => BaseConditions.Us.PressurePascals / 1000, Standing.Computed),
        Check.Printed("standard atmosphere", "101.325", "kPa", Definition, () => Atmosphere.StandardPascals / 1000),
    ];
}
