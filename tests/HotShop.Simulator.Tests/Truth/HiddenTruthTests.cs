using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Simulator.Tests.Truth;

public class HiddenTruthTests
{
    [Fact]
    public void The_glass_of_any_past_minute_can_be_asked_for()
    {
        var studio = Run.Studio(2);
        var noted = new Dictionary<Instant, double>();
        for (var hours = 0.0; hours <= 24; hours += 0.5)
        {
            studio.Advance(Run.At(hours));
            noted[studio.Now] = studio.Truth.GlassKilograms;
        }

        foreach (var (at, kilograms) in noted) Assert.Equal(kilograms, studio.Truth.GlassKilogramsAt(at)!.Value, 1e-4);
        Assert.Null(studio.Truth.GlassKilogramsAt(Run.At(-1)));
        Assert.Null(studio.Truth.GlassKilogramsAt(Run.At(25)));
    }

    [Fact]
    public void The_hours_add_up_to_the_whole()
    {
        var studio = Run.Studio(2);
        studio.Advance(Run.At(48));
        var truth = studio.Truth;
        Assert.Equal(48, truth.Hours.Count);
        Assert.Equal(truth.FurnaceFuel.Kilowatthours, truth.Hours.Sum(h => h.Furnace.Kilowatthours), 1e-6);
        Assert.Equal(truth.GloryHoleFuel.BaseCubicMetres, truth.Hours.Sum(h => h.GloryHole.BaseCubicMetres), 1e-6);
        Assert.Equal(truth.MeltedKilograms, truth.Hours.Sum(h => h.MeltedKilograms), 1e-6);
        Assert.Equal(truth.TakenKilograms, truth.Hours.Sum(h => h.TakenKilograms), 1e-6);
    }

    [Fact]
    public void People_forget_the_share_of_gathers_that_the_seed_chose()
    {
        var studio = new SimulatedStudio(Run.Options(seed: 3, sampleSeconds: 3600));
        var gathers = new Recording(studio.Advance(Run.At(12 * 24))).Entries("gather").Count();
        var truth = studio.Truth;
        Assert.Equal(truth.Gathers - truth.UnloggedGathers, gathers, 3.0);
        Assert.Equal(truth.Parameters.ForgottenShare, (double)truth.UnloggedGathers / truth.Gathers, 0.03);
    }

    // Common practice: small 0.1 to 0.2, medium 0.3 to 0.5, large 0.6 to 1 kg; the seed moves each size by up to 15 %.
    [Fact]
    public void A_gather_weighs_what_its_size_says_give_or_take_the_hidden_factor()
    {
        for (var seed = 1; seed <= 50; seed++)
        {
            var hidden = new SimulatedStudio(Run.Options(seed)).Truth.Parameters;
            Assert.InRange(hidden.SmallGatherFactor, 0.85, 1.15);
            Assert.InRange(hidden.LargeGatherFactor, 0.85, 1.15);
            Assert.InRange(hidden.ForgottenShare, 0, 0.15);
        }
    }

    [Fact]
    public void What_the_crew_weighs_in_is_what_the_pot_gets_but_for_the_scale()
    {
        var studio = new SimulatedStudio(Run.Options(seed: 3, sampleSeconds: 3600));
        var charges = new Recording(studio.Advance(Run.At(5 * 24))).Entries("charge").ToArray();
        var weighed = charges.Sum(c => c.GetProperty("mass").GetDouble());
        Assert.Equal(weighed / studio.Truth.Parameters.ScaleFactor, studio.Plant.Furnace.Pot.ChargedKilograms, 1e-6);
    }

    [Fact]
    public void The_truth_file_has_the_hidden_plant_and_a_line_for_every_hour()
    {
        var studio = Run.Studio(2);
        var writer = new StringWriter();
        var file = new TruthFile(writer);
        for (var hour = 1; hour <= 5; hour++)
        {
            studio.Advance(Run.At(hour));
            file.Write(studio.Truth);
        }

        var lines = writer.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(6, lines.Length);
        Assert.Contains("\"calorificMegajoulesPerCubicMetre\":", lines[0], StringComparison.Ordinal);
        Assert.Contains("\"from\":\"2026-03-03T11:00:00Z\"", lines[5], StringComparison.Ordinal);
    }
}
