using NodaTime;

namespace HotShop.Simulator.Wire;

/// <summary>A measuring device: its channels, its rhythm, and what becomes of its messages when it is cut off.</summary>
internal sealed class Device(string name, int phaseSeconds, int sampleSeconds, IReadOnlyList<Channel> channels)
{
    readonly List<(string Topic, string Payload)> heldBack = [];
    double nextSampleSeconds = phaseSeconds;

    public string Name { get; } = name;

    public void Step(Instant now, string time, double elapsedSeconds, bool isSilent, bool isHeldBack, List<DeviceMessage> outbox)
    {
        var isSampleDue = elapsedSeconds >= nextSampleSeconds;
        if (isSampleDue) nextSampleSeconds += sampleSeconds;
        if (!isHeldBack && heldBack.Count > 0)
        {
            foreach (var (topic, payload) in heldBack) outbox.Add(new(now, Name, topic, payload, Retain: false));
            heldBack.Clear();
        }

        foreach (var channel in channels)
        {
            if (channel.Payload(time, isSampleDue, elapsedSeconds) is not { } payload || isSilent) continue;
            if (isHeldBack) heldBack.Add((channel.Topic, payload));
            else outbox.Add(new(now, Name, channel.Topic, payload, Retain: false));
        }
    }
}
