using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class GlassHeatTests
{
    static readonly GlassHeat Window = GlassProfile.WindowSodaLime.Heat;

    [Property]
    public bool Degrees_to_heat_and_back_is_the_same_degree(ushort share)
    {
        var celsius = 1500.0 * share / ushort.MaxValue;
        return Math.Abs(Window.CelsiusAtContent(Window.ContentKilojoulesPerKilogram(celsius)) - celsius) < 1e-8;
    }

    [Fact]
    public void Specific_heat_is_the_slope_of_the_heat_content() =>
        Assert.Equal(Window.BetweenKilojoulesPerKilogram(1149.99, 1150.01) / 0.02, Window.SpecificKilojoulesPerKilogramKelvin(1150), 1e-6);

    [Theory, InlineData(-1), InlineData(1500.1), InlineData(double.NaN)]
    public void Outside_its_range_the_formula_is_refused(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Window.ContentKilojoulesPerKilogram(celsius));

    [Fact]
    public void The_range_has_both_its_ends()
    {
        Assert.Equal(0, Window.ContentKilojoulesPerKilogram(0));
        Assert.True(Window.ContentKilojoulesPerKilogram(1500) > 1800);
    }

    [Fact]
    public void Cooling_gives_back_what_heating_took() =>
        Assert.Equal(-Window.BetweenKilojoulesPerKilogram(20, 1150), Window.BetweenKilojoulesPerKilogram(1150, 20), 1e-9);

    [Theory, InlineData(4.995, true), InlineData(5.005, false)]
    public void A_glass_of_too_many_unknown_oxides_is_refused(double bariaPercent, bool isKnown)
    {
        var glass = GlassComposition.OfWeights(new Dictionary<Oxide, double> { [Oxide.SiO2] = 80, [Oxide.Na2O] = 20 - bariaPercent, [Oxide.BaO] = bariaPercent });
        Assert.Equal(isKnown, GlassHeat.Knows(glass));
        if (!isKnown) Assert.Throws<ArgumentException>(() => new GlassHeat(glass));
    }

    [Property]
    public bool Mixed_glass_keeps_its_heat(byte hot, byte cold)
    {
        var (hotKilograms, coldKilograms) = (1 + hot, (double)cold);
        var mixed = MeltOut.MixedCelsius(Window, hotKilograms, 1200, coldKilograms, 20);
        return Math.Abs(hotKilograms * Window.BetweenKilojoulesPerKilogram(mixed, 1200) - coldKilograms * Window.BetweenKilojoulesPerKilogram(20, mixed)) < 1e-6;
    }
}
