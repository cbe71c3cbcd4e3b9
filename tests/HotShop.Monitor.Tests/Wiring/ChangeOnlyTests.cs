using System.Text;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Wiring;

/// <summary>A plug of another maker that speaks only when it is switched, from its message to the energy and the alarm.</summary>
public class ChangeOnlyTests
{
    static Task Say(OpenStudio studio, string state) => studio.The<IIntake>().Accept(
        new IncomingMessage("zigbee/plug", Encoding.UTF8.GetBytes($$"""{"state":"{{state}}","linkquality":130}"""), Retained: false, Redelivered: false, studio.Now, "gadget"), default);

    /// <summary>Most of it at a leap; after it the alarms begin to listen anew, and have five minutes for it.</summary>
    static async Task Pass(OpenStudio studio, double hours)
    {
        var end = studio.Now + Hours(hours);
        foreach (var at in Every(Minutes(1), end - Minutes(5), end))
        {
            studio.Now = at;
            await studio.Tick();
        }
    }

    static string? Silence(OpenStudio studio) =>
        studio.The<IAlarmDesk>().Current.Select(AlarmItem.Of).SingleOrDefault(a => a is { Kind: "silent", Appliance: "annealer-1", Channel: "annealer-1/relay" or "relay" })?.State;

    [Fact]
    public async Task Its_last_word_holds_for_hours_counts_as_energy_and_only_a_day_without_a_word_is_silence()
    {
        await using var studio = OpenStudio.Open(
            SomeStudio.With("annealer-1", a => a with { Channels = [SomeStudio.Channel("relay", "relay") with { Reports = "on-change", NameplateKilowatts = 8, Topic = "zigbee/plug", ValuePointer = "/state" }] }),
            more: services => services.AddAnnealing().AddAlarms());
        var on = studio.Now;
        await Say(studio, "ON");
        await Pass(studio, 6);
        Assert.Equal("good", studio.The<ApplianceAnswers>().All(studio.Now).Single(a => a.Appliance == "annealer-1").Channels.Single().Quality);
        await Say(studio, "OFF");

        // 8 kW of the nameplate for six hours.
        var use = studio.Fuel("annealer-1", on, studio.Now);
        Assert.Equal((48, 0), (Math.Round(use.EstimatedKilowattHours, 6), Math.Round(use.EnergyKilowattHours, 6)));

        await Pass(studio, 25.5);
        Assert.Null(Silence(studio));
        await Pass(studio, 1);
        Assert.Equal("unacknowledged", Silence(studio));
        await Say(studio, "OFF");
        await Pass(studio, 0.1);
        Assert.Equal("returned-unacknowledged", Silence(studio));
    }
}
