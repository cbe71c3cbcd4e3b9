using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HotShop.Simulator.Plant;

namespace HotShop.Simulator.Tests.Plant;

public class GlassEnthalpyTests
{
    // Window glass from 20 to 1150 °C: 1.363 MJ/kg, after Sharp and Ginther 1951.
    [Fact]
    public void Melting_cullet_takes_its_published_heat()
    {
        var glass = new GlassEnthalpy(1);
        Assert.Equal(1363, glass.KilojoulesPerKilogram(1150) - glass.KilojoulesPerKilogram(20), 3.0);
    }

    [Property]
    public bool Temperature_and_heat_content_are_each_others_inverse(ushort tenths)
    {
        var (glass, celsius) = (new GlassEnthalpy(1.01), tenths % 15_000 / 10.0);
        return Math.Abs(glass.Celsius(glass.KilojoulesPerKilogram(celsius)) - celsius) < 1e-9;
    }
}
