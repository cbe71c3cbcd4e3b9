using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>What the configured glass changes about a pot.</summary>
public sealed class PotGlassTests
{
    static StudioConfiguration Melting(string profile) => SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { Glass = new() { Profile = profile } } });

    [Theory]
    [InlineData("window-soda-lime", 2361.0)]
    [InlineData("lead-crystal", 2829.4)]
    public async Task A_full_pot_weighs_what_its_glass_weighs(string profile, double density)
    {
        await using var studio = OpenStudio.Open(Melting(profile));
        // 46 cm wide and 45 cm deep: 74.79 litres.
        Assert.Equal(0.07479 * density, studio.The<PotBook>().At("furnace-1", studio.Now)!.State.FullKilograms, 0.02);
    }

    [Fact]
    public async Task Batch_by_its_recipe_leaves_what_its_formulas_leave()
    {
        await using var studio = OpenStudio.Open(SomeStudio.With("furnace-1", a => a with
        {
            Pot = a.Pot! with { BatchRecipe = new Dictionary<string, double> { ["sand"] = 60, ["soda ash"] = 20, ["limestone"] = 10, ["dolomite"] = 6, ["soda feldspar"] = 4 } },
        }));
        await studio.Send("furnace-1/log", """{"entry":"charge","material":"batch","mass":20,"unit":"kg"}""");
        Assert.Equal(16.887, studio.The<PotBook>().GlassMelted("furnace-1", OpenStudio.Start - Hours(1), studio.Now + Hours(1)).Value, 0.001);
        var glass = PotGlassAnswer.Of(studio.The<PotBook>().Find("furnace-1")!);
        Assert.Equal((0.84434, false), (Math.Round(glass.BatchYield, 5), glass.BatchYieldIsUsual));
    }

    [Fact]
    public async Task The_answer_names_the_glass_its_points_and_its_heat()
    {
        await using var studio = OpenStudio.Open(Melting("window-soda-lime"));
        var glass = PotGlassAnswer.Of(studio.The<PotBook>().Find("furnace-1")!);
        Assert.Equal(("window soda-lime", 549, 522, 1150.0), (glass.Name, (int)Math.Round(glass.AnnealingPointCelsius), (int)Math.Round(glass.StrainPointCelsius), glass.MeltAtCelsius));
        // 1363.1 kJ/kg from cullet and 2053.1 from batch.
        Assert.Equal(0.3786, glass.CulletKwhPerKg, 0.0001);
        Assert.Equal(0.5703, glass.BatchKwhPerKg, 0.0001);
        Assert.Equal((0.85, true), (glass.BatchYield, glass.BatchYieldIsUsual));
        Assert.Contains("Fluegel", glass.Source, StringComparison.Ordinal);
    }
}
