using System.Text;
using Xunit;
using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Monitor.Tests.Wire;

/// <summary>A small studio's channels, and messages for them.</summary>
static class SomeChannels
{
    public static readonly Instant Arrival = Instant.FromUtc(2026, 3, 1, 2, 13, 10);

    public static ChannelPlan Plan(string name, Quantity quantity, string appliance = "furnace-1") => new()
    {
        Appliance = appliance, Name = name, Quantity = quantity, Topic = $"hotshop/quillmere/{appliance}/{name}",
    };

    public static readonly ChannelDirectory Directory = new("hotshop", "quillmere", ["furnace-1", "shop"],
    [
        Plan("crown", Quantity.Temperature),
        Plan("couple", Quantity.Temperature) with { Thermocouple = ThermocoupleType.S, ColdJunction = "furnace-1/terminals", DefaultUnit = "mV" },
        Plan("bare-couple", Quantity.Temperature) with { Thermocouple = ThermocoupleType.S, ColdJunction = "furnace-1/terminals" },
        Plan("gas", Quantity.GasFlow),
        Plan("meter", Quantity.GasVolume, "shop"),
        Plan("pulses", Quantity.GasVolume, "shop") with { CubicMetresPerPulse = 0.01, DefaultUnit = "{pulse}" },
        Plan("supply", Quantity.Pressure, "shop"),
        Plan("carbon-monoxide", Quantity.CarbonMonoxide, "shop"),
        Plan("gas-in-air", Quantity.CombustibleGas, "shop"),
        Plan("oxygen", Quantity.Oxygen),
        Plan("heat", Quantity.Power),
        Plan("work", Quantity.Energy),
        Plan("scale", Quantity.Mass, "shop"),
        Plan("flame", Quantity.Flame),
        Plan("bundle-t", Quantity.Temperature) with { Topic = "gadget/7/state", ValuePointer = "/sensors/0/t", TimePointer = "/when", DefaultUnit = "[degF]" },
        Plan("bundle-door", Quantity.Door) with { Topic = "gadget/7/state", ValuePointer = "/door~1open", OnChangeOnly = true },
    ]);

    public static WireContent Read(string topic, byte[] payload, bool retained = false) =>
        new MessageReader(Directory).Read(new IncomingMessage(topic, payload, retained, Redelivered: false, Arrival, Sender: "test"));

    public static WireContent Read(string topic, string payload, bool retained = false) => Read(topic, Encoding.UTF8.GetBytes(payload), retained);

    /// <summary>A payload for a channel such as <c>furnace-1/crown</c>.</summary>
    public static WireContent Send(string channel, string payload) => Read($"hotshop/quillmere/{channel}", payload);

    public static double Value(string channel, string payload)
    {
        var content = Send(channel, payload);
        Assert.Empty(content.Refusals);
        return Assert.Single(content.Readings).Value;
    }

    public static string Reason(WireContent content)
    {
        Assert.Empty(content.Readings);
        Assert.Null(content.Entry);
        return Assert.Single(content.Refusals).Reason;
    }
}
