using System.Text;
using System.Text.Json;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Wiring;

/// <summary>A plug of another maker that speaks only when it is switched, from its message to the energy and the alarm.</summary>
public class ChangeOnlyTests
{
    static Task Say(TestService service, string state) => service.The<IIntake>().Accept(
        new IncomingMessage("zigbee/plug", Encoding.UTF8.GetBytes($$"""{"state":"{{state}}","linkquality":130}"""), Retained: false, Redelivered: false, service.Now, "gadget"), default);

    static async Task Pass(TestService service, int hours)
    {
        service.Clock.Advance(TimeSpan.FromHours(hours));
        await service.Tick();
    }

    static async Task<string?> StateOfSilence(TestService service) =>
        (await service.Get("/api/alarms")).EnumerateArray().Where(a => a.GetRawText().Contains("annealer-1", StringComparison.Ordinal) && a.GetRawText().Contains("relay", StringComparison.Ordinal))
            .Select(a => a.GetProperty("state").GetString()).SingleOrDefault(s => s != "normal");

    static async Task<JsonElement> Relay(TestService service) =>
        (await service.Get("/api/setup/channels")).EnumerateArray().Select(c => c.GetProperty("channel")).Single(c => c.GetProperty("id").GetString()!.EndsWith("annealer-1/relay", StringComparison.Ordinal));

    [Fact]
    public async Task Its_last_word_holds_for_hours_counts_as_energy_and_only_a_day_without_a_word_is_silence()
    {
        await using var service = await TestService.Start(SomeStudio.With("annealer-1",
            a => a with { Channels = [SomeStudio.Channel("relay", "relay") with { Reports = "on-change", NameplateKilowatts = 8, Topic = "zigbee/plug", ValuePointer = "/state" }] }));
        var on = service.Now;
        await Say(service, "ON");
        await Pass(service, 6);
        Assert.Equal("good", (await Relay(service)).GetProperty("quality").GetString());
        await Say(service, "OFF");
        var off = service.Now;
        await Pass(service, 1);

        // 8 kW of the nameplate for six hours.
        var hours = (await service.Get($"/api/fuel?appliance=annealer-1&from={on}&to={off}&step=hour")).EnumerateArray().ToList();
        Assert.Equal(48, hours.Sum(h => h.GetProperty("estimatedEnergyKwh").GetDouble()), 6);
        Assert.Equal(0, hours.Sum(h => h.GetProperty("energyKwh").GetDouble()), 6);

        await Pass(service, 24);
        Assert.Null(await StateOfSilence(service));
        await Pass(service, 3);
        Assert.True(await StateOfSilence(service) is not null, (await service.Get("/api/alarms")).GetRawText());
        await Say(service, "OFF");
        await Pass(service, 1);
        Assert.DoesNotContain(await StateOfSilence(service), new[] { "unacknowledged", "acknowledged" });
        Assert.True(service.Now - off > Days(1));
    }
}
