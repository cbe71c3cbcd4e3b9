using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Monitor.Tests.Configuration;

/// <summary>The glass of a pot as people write it.</summary>
public class GlassChoiceTests
{
    static readonly Dictionary<string, double> Soft = new() { ["SiO2"] = 70, ["Na2O"] = 15, ["K2O"] = 3, ["CaO"] = 8, ["Al2O3"] = 2, ["BaO"] = 2 };

    static PotOptions Pot(GlassOptions? glass) => SomeStudio.Configuration.Appliances[0].Pot! with { Glass = glass };

    static StudioConfiguration Studio(GlassOptions glass) => SomeStudio.With("furnace-1", a => a with { Pot = Pot(glass) });

    static StudioConfiguration Batch(params (string Name, double Parts)[] recipe) =>
        SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { BatchRecipe = recipe.ToDictionary(r => r.Name, r => r.Parts) } });

    public static TheoryData<string, string, string, object> Slips => new()
    {
        { "glass.profile", "'Glasma' is no glass known here", "soft-studio-soda-lime", Studio(new() { Profile = "Glasma" }) },
        { "glass.weightPercent", "a profile is named as well", "leave out one", Studio(new() { Profile = "lead-crystal", WeightPercent = new Dictionary<string, double> { ["SiO2"] = 72, ["Na2O"] = 18, ["CaO"] = 10 } }) },
        { "glass.weightPercent.Si02", "'Si02' is no oxide", "SiO2", Studio(new() { WeightPercent = new Dictionary<string, double> { ["Si02"] = 72, ["Na2O"] = 28 } }) },
        { "glass.weightPercent.0", "'0' is no oxide", "SiO2", Studio(new() { WeightPercent = new Dictionary<string, double> { ["SiO2"] = 72, ["Na2O"] = 28, ["0"] = 1 } }) },
        { "glass.weightPercent.Na2O", "-3 is out of range", "0 to 100", Studio(new() { WeightPercent = new Dictionary<string, double> { ["SiO2"] = 72, ["Na2O"] = -3 } }) },
        { "glass.weightPercent", "add up to 82 %", "together they make 100", Studio(new() { WeightPercent = new Dictionary<string, double> { ["SiO2"] = 72, ["CaO"] = 10 } }) },
        { "glass.weightPercent", "Na2O is 44.23 mol%, the model ends at 42", "annealingPointCelsius", Studio(new() { WeightPercent = new Dictionary<string, double> { ["SiO2"] = 55, ["Na2O"] = 45 } }) },
        { "glass.weightPercent", "density of its melt", "coldKilogramsPerCubicMetre", Studio(new() { WeightPercent = Soft }) },
        { "glass.weightPercent", "of which the heat is not known", "nearest", Studio(new() { ColdKilogramsPerCubicMetre = 2700, WeightPercent = new Dictionary<string, double> { ["SiO2"] = 66, ["Na2O"] = 18, ["CaO"] = 8, ["BaO"] = 8 } }) },
        { "glass.annealingPointCelsius", "some are missing", "write all three", Studio(new() { AnnealingPointCelsius = 495 }) },
        { "glass.annealingPointCelsius", "no glass has these three points", "in °C", Studio(new() { WorkingPointCelsius = 495, SofteningPointCelsius = 660, AnnealingPointCelsius = 950 }) },
        { "glass.annealingPointCelsius", "no glass has these three points", "in °C", Studio(new() { WorkingPointCelsius = 1740, SofteningPointCelsius = 1220, AnnealingPointCelsius = 923 }) },
        { "glass.dippedCelsius", "2100 is out of range", "900 to 1400", Studio(new() { DippedCelsius = 2100 }) },
        { "glass.meltKilogramsPerCubicMetre", "2.36 is out of range", "1900 to 4500", Studio(new() { MeltKilogramsPerCubicMetre = 2.36 }) },
        { "glass.coldKilogramsPerCubicMetre", "2.5 is out of range", "2000 to 5000", Studio(new() { ColdKilogramsPerCubicMetre = 2.5 }) },
        { "pot.batchRecipe", "'unicorn' is no raw material", "soda ash", Batch(("sand", 60), ("unicorn", 1)) },
        { "pot.batchRecipe.sand", "0 is out of range", "write a number", Batch(("sand", 0), ("soda ash", 20)) },
        { "pot.batchRecipe", "'sand' is there twice", "add them up", Batch(("sand", 30), ("Sand", 30)) },
        { "pot.batchRecipe", "yield of batch is written as well", "leave out one", SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { BatchRecipe = new Dictionary<string, double> { ["sand"] = 1 }, GlassYields = new Dictionary<string, double> { ["Batch"] = 0.83 } } }) },
    };

    [Theory, MemberData(nameof(Slips))]
    public void A_slip_about_the_glass_is_named_with_its_place_and_what_to_write(string where, string what, string whatToDo, object configuration)
    {
        var problem = Assert.Single(ConfigurationCheck.Problems((StudioConfiguration)configuration, "hotshop.json"));
        Assert.EndsWith(where, problem.Where, StringComparison.Ordinal);
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(whatToDo, problem.WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_word_it_is_the_soft_studio_glass()
    {
        Assert.Same(GlassProfile.SoftStudioSodaLime, GlassChoice.Of(Pot(null)));
        Assert.Equal(2342.2, GlassChoice.MeltKilogramsPerCubicMetre(Pot(null)), 0.1);
    }

    [Fact]
    public void A_profile_is_taken_at_the_temperature_at_which_it_is_dipped()
    {
        GlassOptions window = new() { Profile = "window-soda-lime", DippedCelsius = 1300 };
        Assert.Empty(ConfigurationCheck.Problems(Studio(window), "hotshop.json"));
        Assert.Equal("window soda-lime", GlassChoice.Of(Pot(window)).Name);
        Assert.Equal(2338.8, GlassChoice.MeltKilogramsPerCubicMetre(Pot(window)), 0.1);
        Assert.Equal(2345, GlassChoice.MeltKilogramsPerCubicMetre(Pot(window with { MeltKilogramsPerCubicMetre = 2345 })));
    }

    [Fact]
    public void An_own_glass_is_computed_from_its_oxides()
    {
        GlassOptions own = new() { Name = "ours", WeightPercent = new Dictionary<string, double> { ["SiO2"] = 72, ["Na2O"] = 14, ["CaO"] = 9, ["MgO"] = 3, ["Al2O3"] = 1.5, ["K2O"] = 0.5 } };
        Assert.Empty(ConfigurationCheck.Problems(Studio(own), "hotshop.json"));
        var (glass, window) = (GlassChoice.Of(Pot(own)), GlassProfile.WindowSodaLime);
        Assert.Equal("ours", glass.Name);
        Assert.Equal(window.AnnealingPointCelsius, glass.AnnealingPointCelsius, 1e-6);
        Assert.Equal(window.ColdKilogramsPerCubicMetre, glass.ColdKilogramsPerCubicMetre, 1e-6);
    }

    [Fact]
    public void The_makers_points_go_before_the_model()
    {
        GlassOptions own = new() { WeightPercent = Soft, ColdKilogramsPerCubicMetre = 2510, WorkingPointCelsius = 960, SofteningPointCelsius = 668, AnnealingPointCelsius = 501 };
        Assert.Empty(ConfigurationCheck.Problems(Studio(own), "hotshop.json"));
        var glass = GlassChoice.Of(Pot(own));
        Assert.Equal(501, glass.AnnealingPointCelsius, 1e-6);
        Assert.Equal(668, glass.SofteningPointCelsius, 1e-6);
        Assert.Equal(501, GlassChoice.Of(Pot(new() { Profile = "lead-crystal", WorkingPointCelsius = 960, SofteningPointCelsius = 668, AnnealingPointCelsius = 501 })).AnnealingPointCelsius, 1e-6);
    }

    [Fact]
    public void What_the_manual_says_to_write_passes_the_check()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HotShop.Monitor.sln"))) folder = Path.GetDirectoryName(folder)!;
        var text = File.ReadAllText(Path.Combine(folder, "docs", "glass.md"));
        var pot = Read<PotOptions>(text, "\"pot\": ");
        var glass = Read<GlassOptions>(text[text.IndexOf("## Your own glass", StringComparison.Ordinal)..], "\"glass\": ");
        Assert.Equal(5, pot.BatchRecipe.Count);
        Assert.Equal("our glass", glass.Name);
        Assert.Empty(ConfigurationCheck.Problems(SomeStudio.With("furnace-1", a => a with { Pot = pot with { Glass = glass } }), "hotshop.json"));
        Assert.All(GlassProfile.All.Keys, id => Assert.Contains($"`{id}`", text, StringComparison.Ordinal));
    }

    static T Read<T>(string text, string key)
    {
        var start = text.IndexOf(key, StringComparison.Ordinal) + key.Length;
        return JsonSerializer.Deserialize<T>(text[start..text.IndexOf("\n\n", start, StringComparison.Ordinal)], ConfigurationFile.Json)!;
    }
}
