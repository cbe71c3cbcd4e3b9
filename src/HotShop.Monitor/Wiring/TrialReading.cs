using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Wiring;

/// <summary>Reads a payload with a channel that is not there yet, exactly as it would be read if it were.</summary>
static class TrialReading
{
    public static WireContent Of(StudioPlan plan, ChannelPlan channel, byte[] payload, Instant at) =>
        new MessageReader(new ChannelDirectory(plan.Channels.Prefix, plan.Site, [channel.Appliance], [channel])).Read(new IncomingMessage(channel.Topic, payload, Retained: false, Redelivered: false, at, Sender: null));
}
