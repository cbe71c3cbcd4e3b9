using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace HotShop.Monitor.Wire;

/// <summary>
/// Turns a message into what it says: readings in stored units, a log entry, and refusals with reasons. Pure, and never throws, whatever the bytes:
/// every row of a payload ends as exactly one reading or one refusal.
/// </summary>
public sealed class MessageReader(ChannelDirectory channels)
{
    /// <summary>Payloads above are refused unread: 256 KiB hold a backlog of about 3,000 readings.</summary>
    public const int LargestPayloadBytes = 256 * 1024;

    static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    public WireContent Read(IncomingMessage message)
    {
        var listening = channels.ForTopic(message.Topic);
        var button = listening.Count == 0 ? channels.Button(message.Topic) : null;
        var logAppliance = listening.Count == 0 ? LogAppliance(message.Topic) : null;
        if (listening.Count == 0 && button is null && logAppliance is null) return WireContent.Refused(Unheard(message.Topic)) with { MayHoldMore = true };

        var payload = message.Payload.AsMemory();
        if (payload.Length > LargestPayloadBytes)
            return WireContent.Refused($"the payload has {payload.Length} bytes, more than {LargestPayloadBytes}: send a backlog in smaller arrays");
        if (!Utf8.IsValid(payload.Span)) return WireContent.Refused("the payload is no valid UTF-8: send text in UTF-8, or plain ASCII");
        // A mark at the start comes from editors and scripts on one widespread system and changes no value.
        if (payload.Span.StartsWith(ByteOrderMark)) payload = payload[ByteOrderMark.Length..];
        if (payload.Span.Trim(" \t\r\n"u8).IsEmpty)
            return WireContent.Refused("the payload is empty: nothing to store (clearing a broker's retained value looks like this)");

        if (button is not null) return ButtonReader.Read(button, message, payload);
        return logAppliance is not null
            ? LogEntryReader.Read(logAppliance, message, payload)
            : Readings(listening, payload) with { MayHoldMore = listening.Any(c => c.ValuePointer is not null) };
    }

    static WireContent Readings(IReadOnlyList<ChannelPlan> listening, ReadOnlyMemory<byte> payload)
    {
        var rows = new RowCollector();
        var isJson = payload.Span.TrimStart(" \t\r\n"u8)[0] is (byte)'{' or (byte)'[' or (byte)'"';
        var (root, problem) = isJson ? StrictJson.Parse(payload) : default;
        var own = listening.Where(c => c.ValuePointer is null).ToList();
        var foreign = listening.Where(c => c.ValuePointer is not null).ToList();
        if (problem is not null || (!isJson && foreign.Count > 0 && own.Count == 0))
            return WireContent.Refused(problem is null ? NoJson(foreign[0], payload) : $"the payload looks like JSON, but {problem}");

        foreach (var channel in own)
            if (isJson) OwnRows.Read(root, channel, rows);
            else rows.Add(channel, WireValue.OfText(Encoding.UTF8.GetString(payload.Span), channel.Quantity.IsState()), null, null);
        if (isJson) ForeignRows.Read(root, foreign, rows);
        else foreach (var channel in foreign) rows.Refuse(channel, NoJson(channel, payload));
        return rows.Content;
    }

    static string NoJson(ChannelPlan channel, ReadOnlyMemory<byte> payload) =>
        $"{channel.Id} reads '{channel.ValuePointer}' out of JSON, but '{Shown.Short(Encoding.UTF8.GetString(payload.Span))}' came: send JSON, or take valuePointer out of the configuration";

    string? LogAppliance(string topic)
    {
        var root = $"{channels.Prefix}/{channels.Site}/";
        if (!topic.StartsWith(root, StringComparison.Ordinal) || !topic.EndsWith("/log", StringComparison.Ordinal)) return null;
        var appliance = topic.Length > root.Length + 4 ? topic[root.Length..^4] : "";
        return channels.Appliances.Contains(appliance) ? appliance : null;
    }

    string Unheard(string topic)
    {
        var root = $"{channels.Prefix}/{channels.Site}/";
        var said = $"no channel listens to '{Shown.Short(topic)}'";
        if (!topic.StartsWith(root, StringComparison.Ordinal)) return $"{said}: topics of this site begin with '{root}'; for another topic add a channel, by a tap on the set-up page or with 'topic' in the configuration";
        var appliance = topic[root.Length..].Split('/')[0];
        if (!channels.Appliances.Contains(appliance))
            return $"{said}: there is no appliance '{Shown.Short(appliance)}' in the configuration; there are {string.Join(", ", channels.Appliances.Order(StringComparer.Ordinal))}";
        var names = channels.All.Where(c => c.Appliance == appliance).Select(c => c.Name).Append("log");
        return $"{said}: {appliance} has {string.Join(", ", names)}; correct the device's topic or add the channel, by a tap on the set-up page or in the configuration";
    }
}
