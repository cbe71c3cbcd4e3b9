using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Pointer;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>Turns what a button publishes into the entry it stands for. What says that it was let go is nothing, and no fault.</summary>
static class ButtonReader
{
    static readonly HashSet<string> letGo = new(StringComparer.OrdinalIgnoreCase) { "0", "off", "false", "open", "up", "release", "released", "null", "" };

    /// <param name="payload">Valid UTF-8, not empty.</param>
    public static WireContent Read(ButtonPlan button, IncomingMessage message, ReadOnlyMemory<byte> payload)
    {
        if (message.Retained)
            return WireContent.Refused($"button {button.Id}: the broker kept this press (retained), so it may be an old one: switch RETAIN off in the device");
        var text = Encoding.UTF8.GetString(payload.Span).Trim();
        Instant? at = null;
        if (button.ValuePointer is not null || button.TimePointer is not null)
        {
            var (root, problem) = StrictJson.Parse(payload);
            if (problem is not null) return WireContent.Refused($"button {button.Id} looks into JSON, but {problem}");
            if (!OwnRows.TryTime(At(root, button.TimePointer), out at, out var timeProblem)) return WireContent.Refused($"button {button.Id}: {timeProblem}");
            text = button.ValuePointer is null ? "" : At(root, button.ValuePointer) is { } value ? Plain(value) : "";
            // Without a pointer to the value, whatever comes is a press.
            if (button.ValuePointer is null) return Press(button, message, at);
        }
        return IsPress(button, text) ? Press(button, message, at) : new WireContent([], null, []);
    }

    static bool IsPress(ButtonPlan button, string text) =>
        button.Pressed.Count > 0 ? button.Pressed.Contains(text, StringComparer.OrdinalIgnoreCase) : !letGo.Contains(text);

    static WireContent Press(ButtonPlan button, IncomingMessage message, Instant? at) =>
        new([], new WireLogEntry(button.Appliance, button.Entry, null, button.Who, at, (JsonObject)button.Fields.DeepClone())
        {
            Delivery = EntryDelivery.Of(message, $"button-{button.Id}", at is not null, button.Settle),
        }, []);

    static JsonElement? At(JsonElement root, string? pointer) =>
        pointer is not null && JsonPointer.TryParse(pointer, out var parsed) ? parsed.Evaluate(root) : null;

    static string Plain(JsonElement value) => value.ValueKind == JsonValueKind.String ? value.GetString()!.Trim() : value.GetRawText();
}
