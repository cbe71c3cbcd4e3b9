using HotShop.Physics.Energy;
using Xunit;

namespace HotShop.Physics.Tests.Energy;

/// <summary>What a metered volume is multiplied with, against the factors that gas suppliers print.</summary>
public class MeterFactorTests
{
    const double Feet = 0.3048;

    /// <summary>Air pressure of American gas measurement manuals, psia: 14.54 · (55096 - (h - 361)) / (55096 + (h - 361)), h in feet (AGA; from memory).</summary>
    static double AgaPsia(double feet) => 14.54 * (55_096 - (feet - 361)) / (55_096 + (feet - 361));

    // The pressures this formula gives to three digits in such manuals' tables (from memory).
    [Theory, InlineData(0, 14.732), InlineData(500, 14.467), InlineData(1000, 14.207), InlineData(2000, 13.700), InlineData(5000, 12.282), InlineData(7000, 11.413)]
    public void The_air_of_the_manuals_agrees_with_ours_to_a_hundredth_of_it(double feet, double psia)
    {
        Assert.Equal(psia, AgaPsia(feet), 0.0006);
        Assert.Equal(psia, Atmosphere.PressurePascals(feet * Feet) / EnergyUnits.PascalsPerPsi, psia * 0.01);
    }

    // Pressure factors to 14.73 psia at 0.25, 2 and 5 psi gauge, computed by their definition from the formula above.
    [Theory]
    [InlineData(0, 1.0171, 1.1359, 1.3396), InlineData(500, 0.9991, 1.1179, 1.3216), InlineData(1000, 0.9814, 1.1002, 1.3039)]
    [InlineData(2000, 0.9470, 1.0658, 1.2695), InlineData(5000, 0.8508, 0.9696, 1.1732), InlineData(7000, 0.7918, 0.9106, 1.1142)]
    public void Pressure_factors_are_those_of_the_table(double feet, double quarterPsi, double twoPsi, double fivePsi)
    {
        foreach (var (gauge, factor) in new[] { (0.25, quarterPsi), (2, twoPsi), (5, fivePsi) })
            Assert.Equal(factor, GasVolume.BaseFactor(gauge * EnergyUnits.PascalsPerPsi, AgaPsia(feet) * EnergyUnits.PascalsPerPsi, BaseConditions.Us.Celsius, BaseConditions.Us), 0.00006);
    }

    // 500 ft taken as 14.4 psia, 2 psi gauge, base 14.73: (14.4 + 2) / 14.73 = 1.1134, the worked example of a meter programming manual.
    [Fact]
    public void A_worked_example_of_a_fixed_factor() =>
        Assert.Equal(1.1134, GasVolume.BaseFactor(2 * EnergyUnits.PascalsPerPsi, 14.4 * EnergyUnits.PascalsPerPsi, BaseConditions.Us.Celsius, BaseConditions.Us), 0.00005);

    // A quarter-psi meter billed with 1.0000 at 5,000 ft: 1 / 0.8508 = 17.5 % more than passed (from the table above).
    [Fact]
    public void A_quarter_psi_meter_at_five_thousand_feet_counts_17_percent_too_much()
    {
        Assert.Equal(0.175, 1 / Factor(AgaPsia(5000) * EnergyUnits.PascalsPerPsi) - 1, 0.0005);
        // The standard atmosphere is 0.5 % thinner there than the manuals' air.
        Assert.Equal(0.175, 1 / Factor(Atmosphere.PressurePascals(5000 * Feet)) - 1, 0.006);

        static double Factor(double airPascals) => GasVolume.BaseFactor(0.25 * EnergyUnits.PascalsPerPsi, airPascals, BaseConditions.Us.Celsius, BaseConditions.Us);
    }

    // An uncompensated diaphragm meter counts 1 % more for each 2.9 K or takes 1 % less for each 10 mbar (ideal gas at 288 K and 1013 mbar, computed).
    [Fact]
    public void Three_degrees_or_ten_millibar_are_one_percent()
    {
        var factor = GasVolume.BaseFactor(0, Atmosphere.StandardPascals, 15, BaseConditions.Iso13443);
        Assert.Equal(0.01, factor / GasVolume.BaseFactor(0, Atmosphere.StandardPascals, 17.9, BaseConditions.Iso13443) - 1, 0.0001);
        Assert.Equal(0.01, GasVolume.BaseFactor(1000, Atmosphere.StandardPascals, 15, BaseConditions.Iso13443) / factor - 1, 0.0002);
    }

    // Bases that thermal mass meters report at, ideal gas, computed from the definitions: 0 °C to 20 °C 1.07322, to 21.1 °C (70 °F) 1.07725, to 25 °C 1.09152.
    [Theory, InlineData(20, 1.07322), InlineData(21.1, 1.07725), InlineData(25, 1.09152)]
    public void A_standard_litre_is_not_a_standard_litre(double celsius, double factor) =>
        Assert.Equal(factor, GasVolume.ToBase(1, 0, Atmosphere.StandardPascals, 0, new BaseConditions("a mass meter's", celsius, Atmosphere.StandardPascals)), 0.00001);

    // Suppliers' published examples in the United Kingdom: 1 unit of 100 ft³ at 39.47333 MJ/m³ is 31.73 kWh; 145 units at 39.7 are printed 4,627.69 (4,627.70 unrounded);
    // a unit is taken as 2.83 m³ there, the exact 100 ft³ being 2.8316847 m³.
    [Theory, InlineData(1, 39.47333, 31.73, 0.005), InlineData(145, 39.7, 4627.70, 0.005)]
    public void Imperial_units_become_the_billed_kilowatt_hours(double hundredsOfCubicFeet, double megajoules, double kilowattHours, double within) =>
        Assert.Equal(kilowattHours, hundredsOfCubicFeet * 2.83 * 1.02264 * EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(megajoules), within);

    [Fact]
    public void A_hundred_cubic_feet_are_2_83_cubic_metres() => Assert.Equal(2.8316847, 100 * EnergyUnits.CubicMetresPerCubicFoot, 0.00000005);

    // A gallon of propane is 36.39 ft³ of vapour at 60 °F (40 CFR 98 prints 91,429 Btu a gallon from 3.84 MMBtu a barrel; GPA 2145: 2516.1 Btu/ft³ at 14.696 psia, ideal gas):
    // 36.39 · 2516.1 = 91,561 Btu, within 300 of 91,500.
    [Fact]
    public void A_gallon_of_propane_is_as_much_by_vapour_as_by_liquid()
    {
        Assert.Equal(91_429, 3.84e6 / 42, 1.0);
        Assert.InRange(36.39 * 2516.1, 91_200, 91_800);
        // ISO 6976:2016, propane 50.326 MJ/kg gross; liquid of 0.507 kg/L at 15 °C (from memory): 7.09 kWh a litre.
        Assert.Equal(7.09, 50.326 / EnergyUnits.MegajoulesPerKilowattHour * 0.507, 0.005);
        // The vapour as this program has it, ISO 6976 at 15 °C and 101.325 kPa, real gas: 1.8 % heavier in heat than the ideal one of GPA 2145.
        var perCubicFoot = FuelGas.Propane.GrossKilowattHours(EnergyUnits.CubicMetresPerCubicFoot) * 3.6e6 / EnergyUnits.JoulesPerBtu;
        Assert.Equal(2516.1, perCubicFoot, 2516.1 * 0.025);
    }
}
