using System.Text;
using HotShop.EndToEnd.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Wiring;

/// <summary>What an outside broker is asked for beyond the channels.</summary>
public class ListenAlsoTests
{
    const string Open = "user hotshop\ntopic read #\ntopic readwrite hotshop/quillmere/out/#\nuser furnace\ntopic write #\n";

    static IEnumerable<string> Heard(OutsideStudio studio) => studio.Intake.Accepted.Select(m => $"{m.Topic} {Encoding.UTF8.GetString(m.Payload)}");

    [Fact]
    public async Task A_strange_topic_is_heard_once_though_several_filters_match_it_and_no_more_when_nobody_asks_for_it()
    {
        await using var mosquitto = await Mosquitto.Start(aclInstead: Open);
        await using (var wide = await OutsideStudio.StartWorking(mosquitto, mosquitto.Options(more: ", \"listenAlso\": [\"zigbee/#\", \"gadget/#\", \"zigbee/+/state\"]")))
        {
            // The channel of this topic alone would ask for it; 'gadget/#' covers it.
            mosquitto.Publish("gadget/7/state", ["{\"open\":true}"]);
            mosquitto.Publish("zigbee/annealer/state", ["481.5"]);
            mosquitto.Publish("elsewhere", ["1"]);
            mosquitto.Publish("hotshop/quillmere/furnace-1/crown", ["1148"]);
            await wide.Stored(3);
            Assert.Equal(["gadget/7/state {\"open\":true}", "zigbee/annealer/state 481.5", "hotshop/quillmere/furnace-1/crown 1148"], Heard(wide));
        }
        await using var narrow = await OutsideStudio.StartWorking(mosquitto);
        mosquitto.Publish("zigbee/annealer/state", ["482"]);
        mosquitto.Publish("gadget/7/state", ["{\"open\":false}"]);
        await narrow.Stored(1);
        Assert.Equal(["gadget/7/state {\"open\":false}"], Heard(narrow));
    }
}
