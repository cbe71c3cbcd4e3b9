using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Tests.FuelGases;
using Xunit;

namespace HotShop.Physics.Tests.Combustion;

public class FlueGasTests
{
    static readonly GasMixture methane = GasMixture.Pure(GasComponent.Methane);

    [Fact]
    public void No_atom_is_lost_in_the_fire()
    {
        var chance = new Random(7);
        foreach (var fuel in SomeGas.Mixtures(8, 2000))
        {
            var flue = FlueGas.Of(fuel, 3 * chance.NextDouble());
            var airOxygen = flue.AirMoles * DryAir.OxygenFraction;
            var airNitrogen = flue.AirMoles * (1 - DryAir.OxygenFraction);
            Assert.Equal(fuel.Atoms.Carbon, flue.CarbonDioxideMoles, 1e-12);
            Assert.Equal(fuel.Atoms.Hydrogen, 2 * flue.WaterMoles, 1e-12);
            Same(fuel.Atoms.Oxygen + 2 * airOxygen, 2 * flue.CarbonDioxideMoles + flue.WaterMoles + 2 * flue.OxygenMoles);
            Same(fuel.Atoms.Nitrogen + 2 * airNitrogen, 2 * flue.NitrogenMoles);
            Assert.Equal(fuel.Atoms.Inert, flue.InertMoles, 1e-12);
            Assert.Equal(flue.WetMoles, flue.CarbonDioxideMoles + flue.WaterMoles + flue.OxygenMoles + flue.NitrogenMoles + flue.InertMoles, 1e-9);
        }

        static void Same(double ours, double theirs) => Assert.InRange(theirs / ours - 1, -1e-12, 1e-12);
    }

    [Fact]
    public void The_shares_of_the_dry_flue_add_up_to_one() =>
        Assert.All(SomeGas.Mixtures(9, 500), fuel =>
        {
            var flue = FlueGas.Of(fuel, 0.3);
            Assert.Equal(1, flue.DryCarbonDioxideFraction + flue.DryOxygenFraction + (flue.NitrogenMoles + flue.InertMoles) / flue.DryMoles, 1e-12);
            Assert.Equal(1, flue.WaterFraction + flue.DryMoles / flue.WetMoles, 1e-12);
        });

    [Fact]
    public void Oxygen_and_excess_air_lead_back_to_each_other()
    {
        var chance = new Random(10);
        foreach (var fuel in SomeGas.Mixtures(11, 1000))
        {
            var excess = 5 * chance.NextDouble();
            var flue = FlueGas.Of(fuel, excess);
            Assert.Equal(excess, ExcessAir.FromDryOxygen(fuel, flue.DryOxygenFraction), 1e-9);
            Assert.Equal(excess, ExcessAir.FromWetOxygen(fuel, flue.WetOxygenFraction), 1e-9);
        }
    }

    [Fact]
    public void The_quick_rule_tells_too_much_air_for_every_hydrocarbon() =>
        Assert.All(GasComponent.All.Where(c => c.Atoms is { Carbon: > 0, Hydrogen: > 0 }), component =>
        {
            var flue = FlueGas.Of(GasMixture.Pure(component), 0.2);
            Assert.InRange(ExcessAir.QuickRule(flue.DryOxygenFraction), 0.21, 0.225);
        });

    [Fact]
    public void A_sample_of_air_or_less_than_nothing_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ExcessAir.FromDryOxygen(methane, 0.20946));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExcessAir.FromDryOxygen(methane, -0.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExcessAir.FromWetOxygen(methane, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlueGas.Of(methane, -0.01));
        Assert.Equal(0, ExcessAir.FromDryOxygen(methane, 0));
    }

    [Fact]
    public void What_does_not_burn_has_no_flue_gas() =>
        Assert.Throws<ArgumentException>(() => FlueGas.Of(GasMixture.Pure(GasComponent.Nitrogen), 0));
}
