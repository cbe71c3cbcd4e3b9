using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Tests.Support;
using HotShop.Physics.FuelGases;
using Xunit;

namespace HotShop.Monitor.Tests.Configuration;

public class GasChoiceTests
{
    [Fact]
    public void Nothing_written_is_a_usual_natural_gas()
    {
        var gas = new StudioGas(new GasOptions());
        Assert.Equal((10.55, 0.18105), (gas.Fuel.GrossKilowattHoursPerCubicMetre, gas.Fuel.CarbonDioxideKilogramsPerKilowattHour));
        Assert.Equal(("natural gas", "40 CFR 98 table C-1, gross", 2016), (gas.Fuel.Name, gas.CarbonDioxideSource, gas.CarbonDioxideYear));
    }

    [Fact]
    public void A_profile_brings_its_heat_its_name_and_its_carbon()
    {
        // ISO 6976:2016, real gas at 15/15 °C: propane 95.664 MJ/m³; 40 CFR 98: 0.21452 kg/kWh.
        var gas = new StudioGas(new GasOptions { Profile = "propane" });
        Assert.Equal(95.664 / 3.6, gas.Fuel.GrossKilowattHoursPerCubicMetre, 0.0005);
        Assert.Equal((0.21452, "propane"), (gas.Fuel.CarbonDioxideKilogramsPerKilowattHour, gas.Fuel.Name));
    }

    [Fact]
    public void A_profile_is_told_at_the_base_of_the_studio() =>
        // ISO 6976:2016 at 25/0 °C: methane 39.828 MJ/m³.
        Assert.Equal(39.828 / 3.6, new StudioGas(new GasOptions { Profile = "methane", Base = "normal" }).Fuel.GrossKilowattHoursPerCubicMetre, 0.0005);

    [Fact]
    public void A_composition_is_worked_out()
    {
        // The first worked example of ISO 6976:2016: 38.410611 MJ/m³.
        var gas = new StudioGas(new GasOptions { Composition = new Dictionary<string, double> { ["methane"] = 93.3212, ["ethane"] = 2.5656, ["propane"] = 1.5368, ["nitrogen"] = 1.0350, ["carbon-dioxide"] = 1.5414 } });
        Assert.Equal(38.410611 / 3.6, gas.Fuel.GrossKilowattHoursPerCubicMetre, 0.0000005);
        Assert.Equal("carbon of the gas, ISO 6976, gross", gas.CarbonDioxideSource);
        Assert.InRange(gas.Fuel.CarbonDioxideKilogramsPerKilowattHour, 0.18, 0.19);
    }

    [Fact]
    public void The_bill_goes_before_the_profile()
    {
        var gas = new StudioGas(new GasOptions { Profile = "natural-gas", GrossKilowattHoursPerCubicMetre = 10.9, CarbonDioxideKilogramsPerKilowattHour = 0.183, CarbonDioxideSource = "the supplier", CarbonDioxideYear = 2025 });
        Assert.Equal((10.9, 0.183, "the supplier", 2025), (gas.Fuel.GrossKilowattHoursPerCubicMetre, gas.Fuel.CarbonDioxideKilogramsPerKilowattHour, gas.CarbonDioxideSource, gas.CarbonDioxideYear));
    }

    public static TheoryData<string, string, GasOptions> Slips => new()
    {
        { "gas.profile", "natural-gas-5-hydrogen", new() { Profile = "town-gas" } },
        { "gas.composition", "leave one of them out", new() { Profile = "propane", Composition = new Dictionary<string, double> { ["propane"] = 100 } } },
        { "gas.composition", "90 %", new() { Composition = new Dictionary<string, double> { ["methane"] = 90 } } },
        { "gas.composition", "'air'", new() { Composition = new Dictionary<string, double> { ["methane"] = 90, ["air"] = 10 } } },
        { "gas.composition", "does not burn", new() { Composition = new Dictionary<string, double> { ["nitrogen"] = 100 } } },
        { "gas.grossKilowattHoursPerCubicMetre", "far from the 26.57", new() { Profile = "propane", GrossKilowattHoursPerCubicMetre = 10.55 } },
        { "gas.grossKilowattHoursPerCubicMetre", "out of range", new() { GrossKilowattHoursPerCubicMetre = 37.8 } },
    };

    [Theory, MemberData(nameof(Slips))]
    public void A_slip_is_named_with_what_to_write(string where, string says, GasOptions gas)
    {
        var problem = Assert.Single(ConfigurationCheck.Problems(SomeStudio.Configuration with { Gas = gas }, "hotshop.json"));
        Assert.EndsWith(where, problem.Where, StringComparison.Ordinal);
        Assert.Contains(says, problem.What + problem.WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_profile_may_be_written() => Assert.All(GasProfile.All, p =>
        Assert.Empty(ConfigurationCheck.Problems(SomeStudio.Configuration with { Gas = new() { Profile = p.Id, Base = "us" } }, "hotshop.json")));

    [Fact]
    public void What_was_kept_before_gases_had_names_is_no_other_gas()
    {
        var before = SomeStudio.Configuration with { Gas = new() { Name = "natural gas", GrossKilowattHoursPerCubicMetre = 10.55, CarbonDioxideKilogramsPerKilowattHour = 0.18105, CarbonDioxideSource = "40 CFR 98 table C-1, gross", CarbonDioxideYear = 2016 } };
        Assert.Equal(before.Gas, SomeStudio.Configuration.Gas.InForce());
    }
}
