using HotShop.Physics.Energy;

namespace HotShop.Checks.Billing;

/// <summary>Air pressure by altitude, and what it does to a meter at a fixed gauge pressure.</summary>
static class AltitudeChecks
{
    const string Manual = "air of American gas measurement manuals, 14.54 (55096 - (h - 361)) / (55096 + (h - 361)) psia with h in ft; formula from memory, values computed",
        Standard = "ISO 2533:1975, standard atmosphere; from memory", Programming = "a meter's programming manual, worked example";

    static readonly (int Feet, string Psia, string Quarter, string Two, string Five)[] table =
    [
        (0, "14.732", "1.0171", "1.1359", "1.3396"), (500, "14.467", "0.9991", "1.1179", "1.3216"), (1000, "14.207", "0.9814", "1.1002", "1.3039"),
        (2000, "13.700", "0.9470", "1.0658", "1.2695"), (5000, "12.282", "0.8508", "0.9696", "1.1732"), (7000, "11.413", "0.7918", "0.9106", "1.1142"),
    ];

    public static IEnumerable<Check> All =>
    [
        .. from at in new[] { (0, "101325"), (500, "95461"), (1000, "89875"), (2000, "79495"), (3000, "70109"), (5000, "54020"), (10000, "26436") }
           select Check.Printed($"standard atmosphere at {at.Item1} m", at.Item2, "Pa", Standard, () => Atmosphere.PressurePascals(at.Item1), Standing.Memory),
        .. from row in table
           from gauge in new[] { (0.25, row.Quarter), (2, row.Two), (5, row.Five) }
           select new Check($"pressure factor to 14.73 psia at {row.Feet} ft, {gauge.Item1} psi gauge", gauge.Item2, "", 0.0001, Manual, Standing.Memory, () => Factor(gauge.Item1, Published.Number(row.Psia))),
        // The standard atmosphere is thinner than the manuals' air: 0.1 % at the sea, 0.7 % at 7,000 ft.
        .. from row in table
           select new Check($"air pressure at {row.Feet} ft: ours beside the manuals'", row.Psia, "psi", 0.007 * Published.Number(row.Psia), Manual, Standing.Memory,
               () => Atmosphere.PressurePascals(row.Feet * 0.3048) / EnergyUnits.PascalsPerPsi),
        Check.Printed("factor of 2 psi gauge and 14.4 psia of air", "1.1134", "", Programming, () => Factor(2, 14.4)),
    ];

    static double Factor(double gaugePsi, double airPsia) =>
        GasVolume.BaseFactor(gaugePsi * EnergyUnits.PascalsPerPsi, airPsia * EnergyUnits.PascalsPerPsi, BaseConditions.Us.Celsius, BaseConditions.Us);
}
