using System.Text;
using System.Text.Json;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Wiring;

/// <summary>A place in a payload where a value, a state or a time stands.</summary>
/// <param name="Pointer">JSON Pointer (RFC 6901); null: the payload itself, or the 'value' of our own object or of each row of an array of them.</param>
/// <param name="Text">As it was sent, shortened.</param>
/// <param name="Unit">What a key named 'unit' beside it says.</param>
sealed record PayloadValue(string? Pointer, string Text, double? Number, bool IsState, Instant? Time, string? Unit = null)
{
    /// <summary>Most places worth showing to a person; deeper or later ones can still be typed.</summary>
    const int Most = 40;

    /// <summary>Everything in a payload that a channel could read; none where it is neither JSON nor a plain value.</summary>
    public static IReadOnlyList<PayloadValue> Of(byte[] payload)
    {
        if (payload.AsSpan().Trim(" \t\r\n"u8).IsEmpty || !System.Text.Unicode.Utf8.IsValid(payload)) return [];
        var (root, problem) = StrictJson.Parse(payload);
        if (problem is not null) return OfLeaf(null, Encoding.UTF8.GetString(payload).Trim(), isQuoted: false, unit: null) is { Time: null } plain && (plain.Number is not null || plain.IsState) ? [plain] : [];
        var found = new List<PayloadValue>();
        if (OwnRow(root) is { } own) found.Add(own);
        else Walk(root, "", null, found);
        return found;
    }

    /// <summary>The project's own object, or the newest of an array of them: read without a pointer.</summary>
    static PayloadValue? OwnRow(JsonElement root)
    {
        var row = root.ValueKind == JsonValueKind.Array && root.GetArrayLength() > 0 ? root[root.GetArrayLength() - 1] : root;
        if (row.ValueKind != JsonValueKind.Object || !row.TryGetProperty("value", out var value)) return null;
        // Only where all of it is ours: a near miss such as 'timestamp' is refused there, and a pointer can still read it.
        if (row.EnumerateObject().Any(p => p.Name is not ("value" or "unit" or "time"))) return root.ValueKind == JsonValueKind.Array ? Leaf(null, value, row) : null;
        return Leaf(null, value, row);
    }

    static void Walk(JsonElement element, string pointer, JsonElement? parent, List<PayloadValue> found)
    {
        if (found.Count >= Most) return;
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var property in element.EnumerateObject())
                    Walk(property.Value, $"{pointer}/{property.Name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}", element, found);
                break;
            case JsonValueKind.Array:
                var index = 0;
                foreach (var item in element.EnumerateArray()) Walk(item, $"{pointer}/{index++}", element, found);
                break;
            default:
                if (Leaf(pointer.Length == 0 ? null : pointer, element, parent) is { } leaf && (leaf.Number is not null || leaf.IsState || leaf.Time is not null)) found.Add(leaf);
                break;
        }
    }

    static PayloadValue? Leaf(string? pointer, JsonElement element, JsonElement? beside)
    {
        var unit = beside is { ValueKind: JsonValueKind.Object } row && row.TryGetProperty("unit", out var said) && said.ValueKind == JsonValueKind.String ? said.GetString() : null;
        return element.ValueKind switch
        {
            JsonValueKind.String => OfLeaf(pointer, element.GetString()!, isQuoted: true, unit),
            JsonValueKind.Number or JsonValueKind.True or JsonValueKind.False => OfLeaf(pointer, element.GetRawText(), isQuoted: false, unit),
            _ => null,
        };
    }

    static PayloadValue OfLeaf(string? pointer, string text, bool isQuoted, string? unit)
    {
        var number = WireValue.OfText(text, isState: false);
        var state = WireValue.OfText(text, isState: true);
        return new(pointer, Shown.Short(text), number.Problem is null ? number.Number : null, state.Problem is null, isQuoted ? StrictTime.Parse(text) : null, unit);
    }
}
