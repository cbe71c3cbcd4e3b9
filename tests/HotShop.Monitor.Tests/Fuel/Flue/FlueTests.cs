using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Tests.Support;
using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;
using Microsoft.Extensions.Hosting;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Fuel.Flue;

public class FlueTests
{
    static readonly StudioConfiguration measured = SomeStudio.With("furnace-1", a => a with
    {
        Flue = new() { Temperature = "flue" },
        Channels = [.. a.Channels, SomeStudio.Channel("oxygen", "oxygen") with { PlausibleLow = "-5 %" }, SomeStudio.Channel("flue", "temperature")],
    });

    static async Task<JsonElement> Fire(TestService service) => (await service.Get("/api/combustion?appliance=furnace-1")).GetProperty("appliances")[0];

    static double Number(JsonElement fire, string name) => fire.GetProperty(name).GetDouble();

    [Fact]
    public async Task Oxygen_and_flue_temperature_become_excess_air_and_available_heat_with_intervals()
    {
        await using var service = await TestService.Start(measured);
        await service.Send("furnace-1/oxygen", """{"value":3.0,"unit":"%"}""");
        await service.Send("furnace-1/flue", "1150");
        var answer = await service.Get("/api/combustion");
        Assert.Contains("no permission to adjust a burner", answer.GetProperty("caution").GetString(), StringComparison.Ordinal);
        Assert.Contains("carbon monoxide", answer.GetProperty("caution").GetString(), StringComparison.Ordinal);
        var fire = await Fire(service);

        var gas = GasProfile.NaturalGas.Mixture;
        var excess = ExcessAir.FromDryOxygen(gas, 0.03);
        Assert.Equal(100 * excess, Number(fire, "excessAirPercent"), 1e-9);
        Assert.Equal(100 * HeatBalance.Of(gas, excess, 1150).AvailableOfGross, Number(fire, "availableHeatPercent"), 1e-9);
        Assert.Equal(100, Number(fire, "availableHeatPercent") + Number(fire, "flueLossPercent"), 1e-9);
        foreach (var name in new[] { "oxygenPercent", "excessAirPercent", "flueCelsius", "availableHeatPercent", "flueLossPercent" })
            Assert.True(Number(fire, name + "Low95") < Number(fire, name) && Number(fire, name) < Number(fire, name + "High95"), name);
        Assert.Equal(JsonValueKind.Null, fire.GetProperty("problem").ValueKind);
        Assert.Contains("Excess air 15 % (13 to 17)", fire.GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Little_oxygen_is_said_to_be_perhaps_a_lack_of_air()
    {
        await using var service = await TestService.Start(measured);
        await service.Send("furnace-1/oxygen", """{"value":0.1,"unit":"%"}""");
        var fire = await Fire(service);
        Assert.Equal(0, Number(fire, "excessAirPercentLow95"));
        Assert.Contains("may be short of air", fire.GetProperty("words").GetString(), StringComparison.Ordinal);
        // Without the flue's temperature there is no heat, and the answer says so.
        Assert.Contains("temperature of the flue gas", fire.GetProperty("problem").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, fire.GetProperty("availableHeatPercent").ValueKind);
    }

    [Theory, InlineData(20.4, "nearly air"), InlineData(-1, "have the analyser checked")]
    public async Task What_is_no_flue_gas_tells_nothing_and_says_why(double percent, string says)
    {
        await using var service = await TestService.Start(measured);
        await service.Send("furnace-1/oxygen", FormattableString.Invariant($$"""{"value":{{percent}},"unit":"%"}"""));
        var fire = await Fire(service);
        Assert.Equal(JsonValueKind.Null, fire.GetProperty("excessAirPercent").ValueKind);
        Assert.Contains(says, fire.GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_reading_and_a_fire_without_flame_tell_nothing()
    {
        await using var service = await TestService.Start(measured);
        Assert.Contains("no reading of oxygen yet", (await Fire(service)).GetProperty("problem").GetString(), StringComparison.Ordinal);
        await service.Send("furnace-1/oxygen", """{"value":3.0,"unit":"%"}""");
        await service.Send("furnace-1/flame", "0");
        Assert.Contains("no flame", (await Fire(service)).GetProperty("problem").GetString(), StringComparison.Ordinal);
        service.Clock.Advance(TimeSpan.FromMinutes(5));
        Assert.Contains("old", (await Fire(service)).GetProperty("problem").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_appliance_without_an_analyser_is_refused_with_what_it_lacks()
    {
        await using var service = await TestService.Start(measured);
        var (status, _, problem) = await service.Wrong(HttpMethod.Get, "/api/combustion?appliance=annealer-1");
        Assert.Equal(404, status);
        Assert.Contains("oxygen", problem.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_figures_go_out_each_minute_and_a_dead_fire_takes_its_own_back()
    {
        await using var service = await TestService.Start(measured);
        var loop = service.The<IEnumerable<IHostedService>>().OfType<DerivedLoop>().Single();
        await service.Send("furnace-1/oxygen", """{"value":3.0,"unit":"%"}""");
        await service.Send("furnace-1/flue", "1150");
        var alight = loop.Fires(service.Now).ToDictionary(f => f.Name, f => f.Percent);
        Assert.Equal(["available-heat", "excess-air"], alight.Keys.Order());
        Assert.All(alight.Values, percent => Assert.True(percent!.HalfWidth95 > 0));
        Assert.All(loop.Fires(service.Now + Duration.FromMinutes(5)), f => Assert.Null(f.Percent));
    }

    public static TheoryData<string, FlueOptions, bool> Slips => new()
    {
        { "flue", new(), false },
        { "flue.sample", new() { Sample = "moist" }, true },
        { "flue.temperature", new() { Temperature = "gas-flow" }, true },
        { "flue.airTemperature", new() { AirTemperature = "nowhere" }, true },
        { "flue.airCelsius", new() { AirCelsius = 2000 }, true },
        { "flue.oxygenUncertaintyPercent", new() { OxygenUncertaintyPercent = 3 }, true },
        { "flue.temperatureUncertaintyKelvins", new() { TemperatureUncertaintyKelvins = -1 }, true },
    };

    [Theory, MemberData(nameof(Slips))]
    public void A_slip_in_the_flue_is_named(string where, FlueOptions flue, bool withOxygen)
    {
        var configuration = SomeStudio.With("furnace-1", a => a with { Flue = flue, Channels = withOxygen ? [.. a.Channels, SomeStudio.Channel("oxygen", "oxygen")] : a.Channels });
        Assert.EndsWith(where, Assert.Single(ConfigurationCheck.Problems(configuration, "hotshop.json")).Where, StringComparison.Ordinal);
    }
}
