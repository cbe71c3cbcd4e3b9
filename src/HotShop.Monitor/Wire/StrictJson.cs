using System.Text.Json;

namespace HotShop.Monitor.Wire;

/// <summary>Parses a payload as JSON (RFC 8259) without the freedoms that let two readers understand two things: no key twice, no comments, no half characters.</summary>
static class StrictJson
{
    static readonly JsonDocumentOptions Options = new() { AllowDuplicateProperties = false, MaxDepth = 32 };

    /// <param name="utf8">Valid UTF-8.</param>
    /// <returns>The root, or why there is none; never both.</returns>
    public static (JsonElement Root, string? Problem) Parse(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8, Options);
            var root = document.RootElement.Clone();
            ReadEveryText(root);
            return (root, null);
        }
        catch (JsonException wrong)
        {
            return (default, Plain(wrong));
        }
        catch (InvalidOperationException)
        {
            // An escape such as \ud800 alone is good JSON, but no text: reading it throws, so it is read here once.
            return (default, "a \\u escape in it is half a character: send both halves or plain UTF-8");
        }
    }

    static void ReadEveryText(JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.String:
                element.GetString();
                break;
            case JsonValueKind.Array:
                foreach (var item in element.EnumerateArray()) ReadEveryText(item);
                break;
            case JsonValueKind.Object:
                foreach (var property in element.EnumerateObject())
                {
                    _ = property.Name;
                    ReadEveryText(property.Value);
                }
                break;
        }
    }

    static string Plain(JsonException wrong)
    {
        var message = wrong.Message;
        if (message.Contains("uplicate", StringComparison.Ordinal)) return "a key is in it twice: send every key once";
        if (message.Contains("maximum configured depth", StringComparison.Ordinal)) return $"it is nested deeper than {Options.MaxDepth} levels: send a flat object";
        if (message.Contains("Expected depth to be zero", StringComparison.Ordinal)) return "it ends before its last bracket is closed: send the whole of it";
        return wrong.BytePositionInLine is { } position
            ? $"it is no JSON from byte {position} of line {wrong.LineNumber + 1} on"
            : "it is no JSON";
    }
}
