using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Tests.FuelGases;
using Xunit;

namespace HotShop.Physics.Tests.Combustion;

public class HeatBalanceTests
{
    static readonly GasMixture gas = GasProfile.NaturalGas.Mixture;

    [Fact]
    public void Hotter_flue_or_more_air_leave_less_and_warmer_air_leaves_more()
    {
        var chance = new Random(12);
        foreach (var fuel in SomeGas.Mixtures(13, 300))
        {
            var (excess, flue, air) = (chance.NextDouble(), 200 + 1300 * chance.NextDouble(), 100 * chance.NextDouble());
            var here = HeatBalance.Of(fuel, excess, flue, air).AvailableOfGross;
            Assert.True(HeatBalance.Of(fuel, excess, flue + 20, air).AvailableOfGross < here);
            Assert.True(HeatBalance.Of(fuel, excess + 0.05, flue, air).AvailableOfGross < here);
            Assert.True(HeatBalance.Of(fuel, excess, flue, air + 20).AvailableOfGross > here);
        }
    }

    [Fact]
    public void What_is_available_and_what_leaves_are_all_there_is()
    {
        var balance = HeatBalance.Of(gas, 0.15, 1149);
        Assert.Equal(1, balance.AvailableOfGross + balance.FlueLossOfGross, 1e-12);
        Assert.Equal(1, balance.AvailableOfNet + balance.FlueLossOfNet, 1e-12);
        Assert.Equal(25, HeatBalance.StandardCelsius, 1e-9);
        Assert.Equal(balance.AvailableOfGross, HeatBalance.Of(gas, 0.15, 1149, 25).AvailableOfGross, 1e-12);
    }

    // Dry air below the temperature of reference takes heat: 9.548 · 1.1 mol of air at 29.1 J/(mol K) and 25 K are 7.64 kJ of 890.58 (worked by hand).
    [Fact]
    public void Air_of_zero_degrees_costs_a_little() => Assert.Equal(0.00858,
        HeatBalance.Of(GasMixture.Pure(GasComponent.Methane), 0.1, 1100, 25).AvailableOfGross - HeatBalance.Of(GasMixture.Pure(GasComponent.Methane), 0.1, 1100, 0).AvailableOfGross, 0.00002);

    // Argon holds 5/2 R: half a mole of it with half a mole of methane takes 1.25 · 8.314462618 · 1000 K = 10.393 kJ of 445.29 gross at 1025 °C (worked by hand).
    [Fact]
    public void Argon_in_the_fuel_takes_its_heat_along()
    {
        var half = GasMixture.OfParts([KeyValuePair.Create(GasComponent.Methane, 1.0), KeyValuePair.Create(GasComponent.Find("argon")!, 1.0)]);
        Assert.Equal(0.023340, HeatBalance.Of(GasMixture.Pure(GasComponent.Methane), 0, 1025).AvailableOfGross - HeatBalance.Of(half, 0, 1025).AvailableOfGross, 0.000002);
    }

    [Fact]
    public void The_boiler_formula_is_too_kind_to_a_furnace()
    {
        var excess = ExcessAir.FromDryOxygen(gas, 0.02);
        Assert.InRange(HeatBalance.Of(gas, excess, 1200).FlueLossOfNet - Siegert.NaturalGas.FlueLossOfNet(1200, 25, 0.02), 0.06, 0.08);
    }

    // Constants of EN 50379 for liquefied gas, from memory: (225 - 25) · (0.63 / 18 + 0.008) = 8.6 % at 3 % oxygen (worked by hand).
    [Fact]
    public void The_boiler_formula_knows_liquefied_gas() => Assert.Equal(0.086, Siegert.LiquefiedGas.FlueLossOfNet(225, 25, 0.03), 1e-12);

    [Fact]
    public void A_recuperator_that_brings_nothing_saves_nothing()
    {
        var cold = HeatBalance.Of(gas, 0.1, 1204);
        Assert.Equal(0, HeatBalance.Of(gas, 0.1, 1204, 25).FuelSavedAgainst(cold), 1e-12);
        Assert.Throws<ArgumentException>(() => cold.FuelSavedAgainst(HeatBalance.Of(gas, 3, 1500)));
    }

    [Theory, InlineData(99.9, 25), InlineData(1600.5, 25), InlineData(1000, -40.05), InlineData(1000, 1200.5), InlineData(double.NaN, 25), InlineData(1000, double.NaN)]
    public void Outside_its_range_the_balance_refuses(double flueCelsius, double airCelsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HeatBalance.Of(gas, 0.1, flueCelsius, airCelsius));

    [Theory, InlineData(100, -40), InlineData(1600, 1200)]
    public void At_the_ends_of_its_range_it_answers(double flueCelsius, double airCelsius) =>
        Assert.InRange(HeatBalance.Of(gas, 0.1, flueCelsius, airCelsius).AvailableOfGross, 0.2, 0.9);
}
