using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class MeltTests
{
    [Fact]
    public void The_studio_glass_anneals_50_degrees_below_window_glass()
    {
        var (studio, window) = (GlassProfile.SoftStudioSodaLime, GlassProfile.WindowSodaLime);
        Assert.Equal(495, studio.AnnealingPointCelsius, 0.5);
        Assert.InRange(window.AnnealingPointCelsius - studio.AnnealingPointCelsius, 50, 60);
    }

    [Fact]
    public void Every_melt_is_lighter_than_its_cold_glass_and_lighter_still_when_hotter() => Assert.All(GlassProfile.All.Values, glass =>
    {
        Assert.True(glass.MeltKilogramsPerCubicMetre(1150) < glass.ColdKilogramsPerCubicMetre);
        Assert.True(glass.MeltKilogramsPerCubicMetre(1250) < glass.MeltKilogramsPerCubicMetre(1150));
    });

    [Theory, InlineData(0.999, true), InlineData(1.001, false)]
    public void A_melt_with_oxides_of_unknown_volume_is_refused(double bariaPercent, bool isKnown)
    {
        var glass = GlassComposition.OfWeights(new Dictionary<Oxide, double> { [Oxide.SiO2] = 75, [Oxide.Na2O] = 25 - bariaPercent, [Oxide.BaO] = bariaPercent });
        Assert.Equal(isKnown, MeltVolume.Knows(glass));
        if (!isKnown) Assert.Throws<ArgumentException>(() => MeltVolume.KilogramsPerCubicMetre(glass, 1150));
    }

    [Fact]
    public void Every_glass_has_a_heat_and_a_source() => Assert.All(GlassProfile.All.Values, glass =>
    {
        Assert.InRange(glass.MeltingKilojoulesPerKilogram(20, 1150, batchShare: 0), 900, 1450);
        Assert.True(glass.Source.Length > 40);
    });

    [Fact]
    public void Twice_the_power_melts_in_half_the_time()
    {
        Assert.Equal(MeltOut.Time(20, 1400, 5), MeltOut.Time(20, 1400, 10) * 2);
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltOut.Time(20, 1400, 0));
    }
}
