using System.Text.Json;
using NodaTime;

namespace HotShop.Simulator.Tests;

/// <summary>What the devices sent, by channel.</summary>
internal sealed class Recording(IReadOnlyList<DeviceMessage> messages)
{
    public IReadOnlyList<DeviceMessage> Messages { get; } = messages;

    /// <summary>Values of a channel such as `furnace-1/flame` between two hours after the start; states as 0 and 1.</summary>
    public double[] Values(string channel, double fromHours, double toHours) =>
        [.. Messages.Where(m => m.Topic == $"hotshop/quillmere/{channel}" && m.At >= Run.At(fromHours) && m.At < Run.At(toHours)).Select(m => Value(m.Payload))];

    public double Last(string channel, double beforeHours) => Values(channel, 0, beforeHours)[^1];

    public IEnumerable<JsonElement> Entries(string kind) => Messages.Where(m => m.Topic.EndsWith("/log", StringComparison.Ordinal))
        .Select(m => JsonDocument.Parse(m.Payload).RootElement).Where(e => e.GetProperty("entry").GetString() == kind);

    public static Recording Of(double hours, params Simulator.Faults.FaultOrder[] faults) => new(Run.Studio(1, faults).Advance(Run.At(hours)));

    static double Value(string payload)
    {
        using var json = JsonDocument.Parse(payload);
        var value = json.RootElement.GetProperty("value");
        return value.ValueKind switch { JsonValueKind.True => 1, JsonValueKind.False => 0, _ => value.GetDouble() };
    }
}
