using HotShop.Physics.Energy;

namespace HotShop.Checks.Billing;

/// <summary>Bills worked out in print.</summary>
static class BillChecks
{
    const string Supplier = "a gas supplier's published example, United Kingdom";

    public static IEnumerable<Check> All =>
    [
        Check.Printed("2 m³ at 39.3 MJ/m³", "22.33", "kW.h", Supplier, () => GasBill.KilowattHours(2, GasBill.UnitedKingdomVolumeFactor, 39.3)),
        Check.Printed("1 imperial unit (100 ft³) at 39.47333 MJ/m³", "31.73", "kW.h", Supplier, () => Imperial(1, 39.47333)),
        new("145 imperial units at 39.7 MJ/m³", "4627.69", "kW.h", 0.011, Supplier + "; printed one digit short of 4,627.70", Standing.Read, () => Imperial(145, 39.7)),
        Check.Printed("volume factor of the bills", "1.02264", "", "Gas (Calculation of Thermal Energy) Regulations 1996; suppliers' bills", () => GasBill.UnitedKingdomVolumeFactor),
        new("volume factor from 12.2 °C, 21 mbar and 67.5 m", "1.02264", "", 0.0002, "the conditions that the factor stands for, from memory", Standing.Memory,
            () => GasVolume.BaseFactor(2100, Atmosphere.PressurePascals(67.5), 12.2, BaseConditions.Iso13443)),
        Check.Printed("imperial unit as bills take it", "2.83", "m3", Supplier, () => GasBill.UnitedKingdomCubicMetresPerHundredCubicFeet),
        Check.Printed("123 CCF × 1.1115 × 1.0355 therms", "141.57", "therm", "form of the bills of the United States, computed", () => GasBill.Therms(123, 1.1115, 1.0355), Standing.Computed),
        Check.Printed("123 CCF × 1.1115 × 1.0355 therms in kWh", "4149", "kW.h", "form of the bills of the United States, computed", () => GasBill.Therms(123, 1.1115, 1.0355) * EnergyUnits.KilowattHoursPerTherm, Standing.Computed),
        Check.Printed("120 m³ at 20 °C and 21 mbar, 39.5 MJ/m³", "1321.0", "kW.h", "worked by hand",
            () => GasBill.KilowattHours(120, GasVolume.BaseFactor(2100, Atmosphere.StandardPascals, 20, BaseConditions.Iso13443), 39.5), Standing.Computed),
    ];

    static double Imperial(double units, double megajoules) =>
        GasBill.KilowattHours(units * GasBill.UnitedKingdomCubicMetresPerHundredCubicFeet, GasBill.UnitedKingdomVolumeFactor, megajoules);
}
