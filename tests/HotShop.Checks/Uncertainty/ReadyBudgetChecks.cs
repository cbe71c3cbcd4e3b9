using HotShop.Physics.Energy;
using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;

namespace HotShop.Checks.Uncertainty;

/// <summary>The service's own budgets, worked by hand from their inputs (JCGM 100:2008, 4.3 and 5.1.6).</summary>
static class ReadyBudgetChecks
{
    const string ByHand = "JCGM 100:2008 (GUM), 4.3.7 and 5.1.6, worked apart from this library", Grid = "convolution of the densities on a grid, apart from this library";

    /// <summary>120 m³ at 20 °C and 21 mbar gauge, heating value 39.5 MJ/m³ at 15 °C and 101.325 kPa.</summary>
    static double KilowattHours => GasVolume.ToBase(120, 2100, 101_325, 20, BaseConditions.Iso13443) * 39.5 / EnergyUnits.MegajoulesPerKilowattHour;

    static Budget Gas => EnergyBudgets.Gas(KilowattHours, 103_425, 20, new GasDoubts(HeatingValuePercent: 1));

    static Budget Glass { get; } = new(95, new Contribution("weighed glass", 0.95));

    static GlassMass Pot { get; } = new(new CylinderPot(0.25, 0.5));

    static double Percent(Budget of) => 100 * of.StandardUncertainty / of.Value;

    static Check Hand(string what, string value, string unit, Func<double> ours) => Check.Printed(what, value, unit, ByHand, ours, Standing.Computed);

    public static IEnumerable<Check> All =>
    [
        Hand("gas: 120 m³ metered at 20 °C and 21 mbar, 39.5 MJ/m³", "1321.0", "kWh", () => Gas.Value),
        Hand("gas: class 1.5 alone", "0.8660", "%", () => 100 * Gas.Contributions[0].Effect / Gas.Value),
        Hand("gas: ±5 °C at 20 °C alone", "-0.9847", "%", () => 100 * Gas.Contributions[1].Effect / Gas.Value),
        Hand("gas: ±5 mbar at 1034.25 mbar alone", "0.2791", "%", () => 100 * Gas.Contributions[2].Effect / Gas.Value),
        Hand("gas: compressibility alone", "0.02887", "%", () => 100 * Gas.Contributions[3].Effect / Gas.Value),
        Hand("gas: heating value ±1 % alone", "0.5774", "%", () => 100 * Gas.Contributions[4].Effect / Gas.Value),
        Hand("gas: combined standard uncertainty, at line conditions", "1.460", "%", () => Percent(Gas)),
        Hand("gas: the same were the line at 15 °C and 101.325 kPa", "1.473", "%", () => Percent(EnergyBudgets.Gas(1321, 101_325, 15, new GasDoubts(HeatingValuePercent: 1)))),
        Hand("gas: with the heating value of a bill, ±2 %", "1.770", "%", () => Percent(EnergyBudgets.Gas(1321, 103_425, 20, new GasDoubts()))),
        Check.Printed("gas: 95 % half-width", "37.07", "kWh", Grid, () => Gas.HalfWidth95, Standing.Computed),
        Check.Printed("gas: 95 % half-width with the heating value of a bill", "3.417", "%", Grid, () => EnergyBudgets.Gas(100, 103_425, 20, new GasDoubts()).HalfWidth95, Standing.Computed),
        Hand("gas per kilogram: 95.0 kg of glass known to 1 %", "13.91", "kWh/kg", () => Gas.Per(Glass).Value),
        Hand("gas per kilogram: combined standard uncertainty", "1.770", "%", () => Percent(Gas.Per(Glass))),
        Check.Printed("gas per kilogram: 95 % half-width", "0.4777", "kWh/kg", Grid, () => Gas.Per(Glass).HalfWidth95, Standing.Computed),
        Hand("electricity: 400 kWh by a meter of class B, 95 % half-width", "7.600", "kWh", () => EnergyBudgets.Electricity(400, 2).HalfWidth95),
        Hand("electricity: 100 kWh by a nameplate, standard uncertainty", "8.660", "kWh", () => EnergyBudgets.Nameplate(100).StandardUncertainty),
        Hand("cost of 400 kWh ±2 % at 0.25, 95 % half-width", "1.900", "", () => EnergyBudgets.Cost(EnergyBudgets.Electricity(400, 2), 0.25).HalfWidth95),
        Hand("cost of 400 kWh ±2 % at 0.25 ±0.02, standard uncertainty", "4.761", "", () => EnergyBudgets.Cost(EnergyBudgets.Electricity(400, 2), 0.25, 0.02).StandardUncertainty),
        Hand("25 kg on a scale of 50 g steps and ±25 g, standard uncertainty", "0.02041", "kg", () => GlassBudgets.Weighed(25, 0.05, 0.025).StandardUncertainty),
        Hand("glass of 25 kg of batch, yield 0.85 ±2 %, standard uncertainty", "0.2460", "kg", () => GlassBudgets.Charged(GlassBudgets.Weighed(25, 0.05, 0.025), ChargeMaterial.Batch, 2).StandardUncertainty),
        Hand("dip of 300 mm ±5 mm in a straight pot 500 mm wide, volume ±2 %, density ±1.5 %", "139.0", "kg", () => GlassBudgets.Dipped(Pot, 0.3, 0.005, 2).Value),
        Hand("the same dip, standard uncertainty", "2.412", "kg", () => GlassBudgets.Dipped(Pot, 0.3, 0.005, 2).StandardUncertainty),
        Hand("heat content 1400 kJ/kg ±3 %, standard uncertainty", "24.25", "kJ/kg", () => GlassBudgets.Heat(1400).StandardUncertainty),
        Hand("efficiency: 95 kg of 1400 kJ/kg out of 400 kWh", "0.09236", "", () => GlassBudgets.Efficiency(Glass, GlassBudgets.Heat(1400), EnergyBudgets.Electricity(400, 2)).Value),
        Hand("efficiency, relative standard uncertainty", "2.309", "%", () => Percent(GlassBudgets.Efficiency(Glass, GlassBudgets.Heat(1400), EnergyBudgets.Electricity(400, 2)))),
        Hand("a month of 30 days of 40 kWh, meter ±2 % in common and 0.5 kWh of noise a day, standard uncertainty", "14.12", "kWh",
            () => CommonAndOwn.Sum(Enumerable.Repeat(CommonAndOwn.Relative(40, 0.02 / Math.Sqrt(3), 0.5 / 40), 30)).Estimate.StandardUncertainty),
    ];
}
