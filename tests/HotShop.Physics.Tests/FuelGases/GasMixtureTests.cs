using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;
using Xunit;

namespace HotShop.Physics.Tests.FuelGases;

public class GasMixtureTests
{
    [Fact]
    public void Fractions_add_up_to_one_whatever_the_parts_were_counted_in() =>
        Assert.All(SomeGas.Mixtures(1, 1000), gas => Assert.Equal(1, gas.Fractions.Values.Sum(), 1e-12));

    // Standard atomic weights as ISO 6976:2016 takes them, annex A: C 12.0107, H 1.00794, O 15.9994, N 14.0067.
    [Fact]
    public void A_component_weighs_what_its_atoms_weigh() => Assert.All(GasComponent.All.Where(c => c.Atoms.Inert == 0), c =>
        Assert.Equal(12.0107 * c.Atoms.Carbon + 1.00794 * c.Atoms.Hydrogen + 15.9994 * c.Atoms.Oxygen + 14.0067 * c.Atoms.Nitrogen, c.MolarMass, 0.01));

    [Theory, InlineData("argon"), InlineData("helium")]
    public void A_noble_gas_goes_through_the_fire_as_single_atoms(string name) => Assert.Equal(new Atoms(0, 0, 0, 0, 1), GasComponent.Find(name)!.Atoms);

    [Fact]
    public void A_blend_holds_what_was_blended()
    {
        var chance = new Random(2);
        foreach (var (one, other) in SomeGas.Mixtures(3, 300).Zip(SomeGas.Mixtures(4, 300)))
        {
            var share = chance.NextDouble();
            var blend = one.With(other, share);
            Assert.All(GasComponent.All, c => Assert.Equal((1 - share) * one.Fraction(c) + share * other.Fraction(c), blend.Fraction(c), 1e-12));
            Assert.Equal((1 - share) * one.MolarMass + share * other.MolarMass, blend.MolarMass, 1e-9);
        }
    }

    [Fact]
    public void Gross_is_never_below_net_and_equal_only_without_hydrogen() =>
        Assert.All(SomeGas.Mixtures(5, 1000), gas => Assert.All(Enum.GetValues<ReferenceTemperature>(), t =>
            Assert.Equal(gas.Atoms.Hydrogen > 0, gas.GrossKilojoulesPerMole(t) > gas.NetKilojoulesPerMole(t))));

    [Fact]
    public void Hydrogen_in_natural_gas_takes_heat_and_wobbe_index_away_step_by_step()
    {
        var steps = Enumerable.Range(0, 81).Select(i => GasProfile.NaturalGas.Mixture.With(GasMixture.Pure(GasComponent.Hydrogen), i / 100.0).At(GasReference.Iso13443)).ToList();
        // The index turns up again beyond 80 % hydrogen, for lightness: pure hydrogen has 45.9 MJ/m³.
        foreach (var (less, more) in steps.Zip(steps.Skip(1)))
        {
            Assert.True(more.GrossMegajoulesPerCubicMetre < less.GrossMegajoulesPerCubicMetre);
            Assert.True(more.GrossWobbeMegajoulesPerCubicMetre < less.GrossWobbeMegajoulesPerCubicMetre);
        }
    }

    [Fact]
    public void The_natural_gas_of_the_profiles_is_the_natural_gas_of_the_meters() =>
        Assert.Equal(GasProfile.NaturalGas.Mixture.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre / 3.6, FuelGas.NaturalGas.GrossKilowattHoursPerCubicMetre, 1e-12);

    [Fact]
    public void A_percent_of_butane_is_a_percent_of_butane()
    {
        var lpg = GasProfile.Find("lpg-70-30")!.Mixture;
        Assert.Equal((0.7, 0.2, 0.1), (Math.Round(lpg.Fraction(GasComponent.Propane), 12), Math.Round(lpg.Fraction(GasComponent.Find("n-butane")!), 12), Math.Round(lpg.Fraction(GasComponent.Find("isobutane")!), 12)));
    }

    [Theory, InlineData("natural-gas-5-hydrogen", 0.05), InlineData("natural-gas-10-hydrogen", 0.1), InlineData("natural-gas-20-hydrogen", 0.2), InlineData("hydrogen", 1), InlineData("propane", 0)]
    public void A_percent_of_hydrogen_is_a_percent_of_hydrogen(string profile, double fraction) => Assert.Equal(fraction, GasProfile.Find(profile)!.Mixture.Fraction(GasComponent.Hydrogen), 1e-12);

    [Fact]
    public void Reference_temperatures_are_what_they_are_called() =>
        Assert.Equal([0, 15, (60 - 32) / 1.8, 20, 25], Enum.GetValues<ReferenceTemperature>().Select(t => t.Celsius()));

    [Fact]
    public void The_lean_gas_has_the_percentages_it_is_said_to_have()
    {
        (string Name, double Percent)[] said = [("methane", 94.89), ("ethane", 2.5), ("propane", 0.2), ("n-butane", 0.03), ("isobutane", 0.03), ("n-pentane", 0.01), ("isopentane", 0.01), ("n-hexane", 0.01), ("nitrogen", 1.6), ("carbon-dioxide", 0.7), ("oxygen", 0.02)];
        Assert.All(said, s => Assert.Equal(s.Percent, 100 * GasProfile.NaturalGas.Mixture.Fraction(GasComponent.Find(s.Name)!), 1e-7));
    }

    [Fact]
    public void The_pressure_of_a_base_lies_where_the_standard_holds()
    {
        Assert.Throws<ArgumentException>(() => At(89_900));
        Assert.Throws<ArgumentException>(() => At(110_100));
        Assert.True(At(90_000).CompressionFactor > At(110_000).CompressionFactor);

        static GasProperties At(double pascals) => GasProfile.NaturalGas.Mixture.At(new GasReference(ReferenceTemperature.Celsius15, new BaseConditions("a base", 15, pascals)));
    }

    [Fact]
    public void A_volume_at_an_odd_temperature_is_refused_with_what_there_is()
    {
        var refused = Assert.Throws<ArgumentException>(() => GasReference.For(new BaseConditions("17 °C", 17, Atmosphere.StandardPascals)));
        Assert.Contains("0, 15, 20 °C and 60 °F", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => GasReference.For(new BaseConditions("25 °C", 25, Atmosphere.StandardPascals)));
        Assert.Equal(ReferenceTemperature.Celsius25, GasReference.For(BaseConditions.Normal).Combustion);
        Assert.Equal(GasReference.Iso13443, GasReference.For(BaseConditions.Iso13443));
    }

    [Fact]
    public void Nothing_is_no_mixture()
    {
        Assert.Throws<ArgumentException>(() => GasMixture.OfParts([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => GasMixture.OfParts([KeyValuePair.Create(GasComponent.Methane, -0.1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => GasMixture.OfParts([KeyValuePair.Create(GasComponent.Methane, double.NaN)]));
        Assert.Throws<InvalidOperationException>(() => GasMixture.Pure(GasComponent.Nitrogen).CarbonDioxideKilogramsPerGrossKilowattHour);
    }
}
