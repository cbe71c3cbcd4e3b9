using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Energy;

public class FuelTests
{
    // Worked by hand: 120 m³ at 20 °C and 21 mbar gauge, base 15 °C and 101.325 kPa, 39.5 MJ/m³:
    // (101325 + 2100)/101325 · 288.15/293.15 = 1.003316; 120 · 1.003316 · 39.5/3.6 = 1321.0 kWh gross.
    [Fact]
    public void A_month_of_metered_gas_becomes_gross_kilowatt_hours()
    {
        Assert.Equal(1.003316, GasVolume.BaseFactor(2100, 101325, 20, BaseConditions.Iso13443), 1e-6);
        var gas = FuelGas.NaturalGas.WithGrossMegajoulesPerCubicMetre(39.5, BaseConditions.Iso13443);
        Assert.Equal(1321.0, gas.GrossKilowattHours(120, 2100, 101325, 20), 0.05);
    }

    // The same example's uncertainty after JCGM 100, standard uncertainties of meter 0.866 %, temperature 1.002 %, pressure 0.285 %,
    // compressibility 0.029 %, heating value 0.577 %: together 1.473 %; with 95.0 kg ± 1 %: 13.91 kWh/kg ± 1.780 %.
    [Fact]
    public void Energy_per_kilogram_carries_its_uncertainty()
    {
        var energy = Estimate.Relative(120, 0.00866) * Estimate.Relative(1.003316, 0.01002) * Estimate.Relative(1, 0.00285)
            * Estimate.Relative(1, 0.00029) * Estimate.Relative(39.5 / 3.6, 0.00577);
        Assert.Equal(0.01473, energy.RelativeUncertainty, 0.000005);
        var perKilogram = energy / Estimate.Relative(95.0, 0.01);
        Assert.Equal(13.91, perKilogram.Value, 0.005);
        Assert.Equal(0.01780, perKilogram.RelativeUncertainty, 0.000005);
    }

    // 2.000 m³/h for 2 h, both ends sampled, irregular spacing, with a step up to 3 m³/h from 40 to 70 min: by hand
    // 2 · 2 + 1 · 0.5 = 4.5 m³ of line gas; at 21 mbar, 101.325 kPa and 20 °C the base volume is 4.5 · 1.003316 m³.
    [Fact]
    public void Two_hours_of_flow_with_a_step_agree_with_the_hand_calculation()
    {
        var flow = Samples((0, 2), (0.5, 2), (3, 2), (3.2, 2), (7, 2), (11.7, 2), (16, 2), (20, 2), (24.9, 2), (29, 2), (33, 2), (37, 2), (39.999, 2),
            (40.001, 3), (44, 3), (48.5, 3), (52, 3), (56, 3), (60, 3), (63, 3), (67, 3), (69.999, 3),
            (70.001, 2), (74, 2), (78, 2), (82, 2), (86, 2), (90, 2), (94, 2), (98, 2), (102, 2), (106, 2), (110, 2), (114, 2), (118, 2), (120, 2));
        var total = HourIntegral.Of(At(0), At(120), flow, Course.Linear, Duration.FromMinutes(5));
        Assert.Equal(7200, total.CoveredSeconds);
        Assert.Equal(4.5, total.IntegralHours, 4.5 * 0.0001);
        var gas = FuelGas.NaturalGas.WithGrossMegajoulesPerCubicMetre(39.5, BaseConditions.Iso13443);
        var byHand = 4.5 * 1.003316 * 39.5 / 3.6;
        Assert.Equal(byHand, gas.GrossKilowattHours(total.IntegralHours, 2100, 101325, 20), byHand * 0.001);
    }

    // Ideal-gas conversion of base volumes, computed from the definitions of the bases.
    [Fact]
    public void A_cubic_metre_at_one_base_is_another_at_the_next()
    {
        Assert.Equal(1.05491, GasVolume.ToBase(1, 0, 101325, 0, BaseConditions.Iso13443), 0.000005);
        Assert.Equal(0.99961, GasVolume.ToBase(1, 0, 101325, 15, BaseConditions.Us), 0.000005);
    }

    // Gas bills of the United Kingdom multiply by 1.02264: 12.2 °C, 21 mbar gauge at 67.5 m altitude (from memory; computed 1.0227).
    [Fact]
    public void The_factor_on_a_gas_bill_is_about_that_of_its_stated_conditions() =>
        Assert.Equal(1.0227, GasVolume.BaseFactor(2100, Atmosphere.PressurePascals(67.5), 12.2, BaseConditions.Iso13443), 0.0002);

    // Temperature factors to 60 °F of a meter without compensation, computed from the definition.
    [Theory, InlineData(0, 1.1305), InlineData(32, 1.0569), InlineData(50, 1.0196), InlineData(60, 1), InlineData(90, 0.9454)]
    public void Cold_gas_is_more_gas(double fahrenheit, double factor) =>
        Assert.Equal(factor, GasVolume.BaseFactor(0, BaseConditions.Us.PressurePascals, (fahrenheit - 32) / 1.8, BaseConditions.Us), 0.00005);

    // Standard atmosphere, ISO 2533:1975 (from memory): 95461 Pa at 500 m, 89875 at 1000 m, 79495 at 2000 m.
    [Theory, InlineData(0, 101325), InlineData(500, 95461), InlineData(1000, 89875), InlineData(2000, 79495)]
    public void Air_pressure_falls_with_altitude(double metres, double pascals) => Assert.Equal(pascals, Atmosphere.PressurePascals(metres), 0.5);

    // Pressure factors of gas-measurement manuals at 0.25 psi gauge, base 14.73 psia; their formula for the air (from memory) and the
    // standard atmosphere differ by less than 0.004 up to 2,000 ft.
    [Theory, InlineData(0, 1.0171), InlineData(500, 0.9991), InlineData(1000, 0.9814), InlineData(2000, 0.9470)]
    public void A_low_pressure_meter_counts_too_much_gas_on_a_mountain(double feet, double factor) =>
        Assert.Equal(factor, (Atmosphere.PressurePascals(feet * 0.3048) + 0.25 * EnergyUnits.PascalsPerPsi) / BaseConditions.Us.PressurePascals, 0.004);

    [Fact]
    public void Billing_units_have_their_defined_sizes()
    {
        Assert.Equal(29.307107, EnergyUnits.KilowattHoursPerTherm, 0.0000005);
        Assert.Equal(0.0372589458 / 3.6, EnergyUnits.KilowattHoursPerCubicMetreOfBtu(1), 1e-11);
        // 2 m³ at 39.3 MJ/m³, factor 1.02264: 22.33 kWh, a supplier's published example.
        Assert.Equal(22.33, 2 * 1.02264 * EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(39.3), 0.005);
        // 123 CCF × 1.1115 × 1.0355 therm/CCF = 141.57 therm = 4,149 kWh.
        Assert.Equal(4149, 123 * 1.1115 * 1.0355 * EnergyUnits.KilowattHoursPerTherm, 0.5);
    }

    // 40 CFR 98 table C-1: natural gas 53.06 kg CO2/MMBtu gross, propane 62.87.
    [Fact]
    public void Burning_a_kilowatt_hour_gives_the_published_carbon_dioxide()
    {
        Assert.Equal(53.06, FuelGas.NaturalGas.CarbonDioxideKilogramsPerKilowattHour * 293.07107, 0.01);
        Assert.Equal(62.87, FuelGas.Propane.CarbonDioxideKilogramsPerKilowattHour * 293.07107, 0.01);
    }

    // ISO 6976:2016, real gas at 15/15 °C: propane 95.664 MJ/m³ gross.
    [Fact]
    public void Propane_has_two_and_a_half_times_the_heat_of_natural_gas() =>
        Assert.Equal(95.664 / 3.6, FuelGas.Propane.GrossKilowattHours(1), 1e-9);

    [Fact]
    public void An_atmosphere_of_no_pressure_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GasVolume.ToBase(1, 0, 0, 15, BaseConditions.Iso13443));
}
