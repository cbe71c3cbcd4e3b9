using HotShop.Physics.Radiation;
using Xunit;

namespace HotShop.Physics.Tests.Radiation;

public class RadiationTests
{
    [Fact]
    public void Nothing_radiates_between_equal_temperatures() => Assert.Equal(0, OpenDoor.RadiatedKilowatts(1, 20));

    [Fact]
    public void A_chamber_of_which_nothing_is_said_is_seen_as_nine_tenths_black_from_a_room_of_twenty_degrees() =>
        Assert.Equal(OpenDoor.RadiatedKilowatts(1, 1150, emissivity: 0.9, viewFactor: 1, surroundingsCelsius: 20), OpenDoor.RadiatedKilowatts(1, 1150), 1e-9);

    [Fact]
    public void A_view_factor_above_one_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => OpenDoor.RadiatedKilowatts(1, 1150, 0.9, 1.1));

    // Colours computed independently by the same published steps (Planck, CIE 1931 fit, sRGB), one program and one language apart.
    [Theory]
    [InlineData(20, 0, 0, 0), InlineData(480, 38, 0, 0), InlineData(600, 78, 1, 0), InlineData(700, 117, 14, 0), InlineData(800, 158, 37, 0), InlineData(900, 195, 64, 0)]
    [InlineData(1000, 223, 95, 0), InlineData(1100, 241, 128, 0), InlineData(1150, 246, 144, 0), InlineData(1200, 250, 161, 0), InlineData(1250, 252, 176, 0)]
    public void The_glow_has_the_colour_of_a_black_body(double celsius, byte red, byte green, byte blue) =>
        Assert.Equal(new SrgbColour(red, green, blue), Glow.Srgb(celsius));

    [Fact]
    public void Hotter_is_never_darker()
    {
        var before = Glow.Srgb(20);
        for (var celsius = 25; celsius <= 1400; celsius += 5)
        {
            var now = Glow.Srgb(celsius);
            Assert.True(now.Red >= before.Red && now.Green >= before.Green, $"at {celsius} °C");
            before = now;
        }
    }

    [Fact]
    public void A_colour_is_written_as_style_sheets_want_it() => Assert.Equal("#f69000", Glow.Srgb(1150).Hex);
}
