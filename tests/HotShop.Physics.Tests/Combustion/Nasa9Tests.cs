using HotShop.Physics.Combustion;
using Xunit;

namespace HotShop.Physics.Tests.Combustion;

public class Nasa9Tests
{
    static readonly Nasa9[] all = [Nasa9.CarbonDioxide, Nasa9.WaterVapour, Nasa9.Nitrogen, Nasa9.Oxygen, Nasa9.Methane, Nasa9.Ethane, Nasa9.Propane];

    // The source fitted both ranges to meet at 1000 K.
    [Fact]
    public void The_two_ranges_of_a_gas_meet() => Assert.All(all, gas => Assert.Equal(0, gas.SeamGapKilojoulesPerMole, 2e-6));

    [Fact]
    public void Heat_rises_with_temperature_and_begins_at_the_reference() => Assert.All(all, gas =>
    {
        Assert.Equal(0, gas.KilojoulesPerMoleAbove298(298.15), 1e-9);
        for (var kelvin = 200; kelvin < 2500; kelvin += 20) Assert.True(gas.KilojoulesPerMoleAbove298(kelvin + 20) > gas.KilojoulesPerMoleAbove298(kelvin));
    });

    [Theory, InlineData(199.5), InlineData(2505), InlineData(double.NaN)]
    public void Outside_the_range_it_refuses(double kelvin) => Assert.Throws<ArgumentOutOfRangeException>(() => Nasa9.Oxygen.KilojoulesPerMoleAbove298(kelvin));
}
