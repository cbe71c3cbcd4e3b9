using System.Text.Json;
using System.Text.Json.Nodes;

namespace HotShop.Monitor.Wire;

/// <summary>A log entry sent by MQTT: one object with <c>entry</c>; the form is checked (<see cref="LogEntryForm"/>), the sense is the logbook's.</summary>
static class LogEntryReader
{
    public static WireContent Read(string appliance, IncomingMessage message, ReadOnlyMemory<byte> payload)
    {
        var (root, problem) = StrictJson.Parse(payload);
        if (problem is not null) return WireContent.Refused($"the log entry cannot be read, {problem}: send an object such as {{\"entry\":\"gather\",\"size\":\"medium\",\"count\":3}}");
        var checkedEntry = LogEntryForm.Check(root, appliance);
        if (checkedEntry.Problem is not null) return WireContent.Refused($"log entry of {appliance}: {checkedEntry.Problem}");
        // The broker repeats a retained message at every connection; only an id can tell the repetition from a second gather.
        if (message.Retained && checkedEntry.Entry!.Id is null)
            return WireContent.Refused($"log entry of {appliance}: it was kept by the broker (retained) and has no id, so it may be an old one again: send log entries without RETAIN, or with an id");
        var entry = checkedEntry.Entry!;
        return new WireContent([], entry.Id is null ? entry with { Delivery = EntryDelivery.Of(message, "mqtt", entry.At is not null, NodaTime.Duration.Zero) } : entry, []);
    }
}
