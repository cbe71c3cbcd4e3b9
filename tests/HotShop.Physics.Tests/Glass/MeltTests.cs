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

    // The compositions that their sources give, in weight %; the last adds up to 99.7, as data sheets do.
    public static TheoryData<string, Dictionary<Oxide, double>> Compositions => new()
    {
        { "soft-studio-soda-lime", new() { [Oxide.SiO2] = 69.5, [Oxide.Na2O] = 16, [Oxide.K2O] = 3.5, [Oxide.CaO] = 6, [Oxide.BaO] = 1.5, [Oxide.Al2O3] = 1.5, [Oxide.B2O3] = 1, [Oxide.Li2O] = 0.5, [Oxide.ZnO] = 0.5 } },
        { "window-soda-lime", new() { [Oxide.SiO2] = 72, [Oxide.Na2O] = 14, [Oxide.CaO] = 9, [Oxide.MgO] = 3, [Oxide.Al2O3] = 1.5, [Oxide.K2O] = 0.5 } },
        { "lead-crystal", new() { [Oxide.SiO2] = 57, [Oxide.PbO] = 28, [Oxide.K2O] = 12, [Oxide.Na2O] = 1.5, [Oxide.ZnO] = 1, [Oxide.B2O3] = 0.5 } },
        { "borosilicate-3.3", new() { [Oxide.SiO2] = 81, [Oxide.B2O3] = 12.5, [Oxide.Na2O] = 4, [Oxide.Al2O3] = 2.2 } },
    };

    [Theory, MemberData(nameof(Compositions))]
    public void A_glass_is_made_of_what_its_source_says(string id, Dictionary<Oxide, double> weightPercent)
    {
        var (glass, sum) = (GlassProfile.All[id].Composition.WeightPercent, weightPercent.Values.Sum());
        Assert.Equal(weightPercent.Count, glass.Count);
        Assert.All(weightPercent, w => Assert.Equal(100 * w.Value / sum, glass[w.Key], 1e-9));
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
