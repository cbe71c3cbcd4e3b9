using System.Text.Json;
using Json.Pointer;

namespace HotShop.Monitor.Wire;

/// <summary>Payloads of devices that cannot write ours: each channel points (RFC 6901) to its value and time.</summary>
static class ForeignRows
{
    public static void Read(JsonElement root, IReadOnlyList<ChannelPlan> channels, RowCollector rows)
    {
        List<ChannelPlan> absent = [];
        foreach (var channel in channels)
        {
            if (At(root, channel.ValuePointer!) is not { } value)
            {
                absent.Add(channel);
                continue;
            }
            var time = channel.TimePointer is { } pointer ? At(root, pointer) : null;
            // A configured time that is missing is no invitation to stamp the arrival: the device may be sending what it remembers.
            if (channel.TimePointer is not null && time is null)
                rows.Refuse(channel, $"there is nothing at '{channel.TimePointer}' in the payload, where its time should be: correct timePointer or the device");
            else if (!OwnRows.TryTime(time, out var at, out var problem)) rows.Refuse(channel, problem);
            else rows.Add(channel, WireValue.Of(value, channel.Quantity.IsState()), null, at);
        }
        foreach (var channel in absent)
        {
            // A bundle that carries only what changed is whole without the rest.
            if (channel.OnChangeOnly && absent.Count < channels.Count) continue;
            rows.Refuse(channel, $"there is nothing at '{channel.ValuePointer}' in the payload: correct valuePointer or the device");
        }
    }

    static JsonElement? At(JsonElement root, string pointer) =>
        JsonPointer.TryParse(pointer, out var parsed) ? parsed.Evaluate(root) : null;
}
