using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Simulator.Tests.Faults;

public class ScenarioTests
{
    static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    public static TheoryData<string> Names => [.. Scenarios.Names];

    [Theory, MemberData(nameof(Names))]
    public void Every_story_can_be_played_from_any_hour_of_the_week(string name)
    {
        for (var hour = 0; hour < 168; hour++)
        {
            var start = Run.At(hour);
            var scenario = Scenarios.Named(name, start, Berlin);
            Assert.NotNull(scenario);
            Assert.All(scenario.Faults, f => Assert.Null(f.Problem()));
        }
    }

    [Fact]
    public void First_light_puts_a_real_flame_out_within_the_first_day_whenever_it_begins()
    {
        for (var hour = 0; hour < 168; hour += 7)
        {
            var start = Run.At(hour);
            var faults = Scenarios.Named("first-light", start, Berlin)!.Faults;
            var flameOut = Assert.Single(faults, f => f.Kind == FaultKind.FlameOutWithGas);
            Assert.True(faults.All(f => f.After + f.For < Duration.FromHours(24)), "all is over within a day");

            var studio = new SimulatedStudio(new SimulationOptions { Start = start, Faults = faults, SampleSeconds = 60 });
            studio.Advance(start + flameOut.After - Duration.FromMinutes(1));
            var burner = flameOut.Appliance == Quillmere.Furnace ? studio.Plant.Furnace.Burner : studio.Plant.GloryHole.Burner;
            Assert.True(burner.HasFlame, $"burning before, start {start}");
            studio.Advance(start + flameOut.After + Duration.FromMinutes(10));
            Assert.True(!burner.HasFlame && burner.GasCubicMetresPerHour > 0, "gas without flame");
        }
    }

    [Fact]
    public void There_is_no_story_of_an_unknown_name() => Assert.Null(Scenarios.Named("nothing", Run.Tuesday, Berlin));
}
