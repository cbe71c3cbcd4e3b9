using System.Text.Json;
using System.Text.Json.Nodes;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.History.Import;

/// <summary>
/// An entry's fields as cells and back. What people count and weigh has a column of its own; whatever else an entry holds (a tally's gathers by size,
/// a correction that takes a field away) stands in the column <c>more</c> as a JSON object.
/// </summary>
static class LogbookCells
{
    public const string More = "more";

    static readonly string[] fixedColumns = ["id", "appliance", "entry", "time", "who"];
    static readonly string[] texts = ["size", "material", "unit", "mode", "text", "of", "from", "to"];
    static readonly string[] numbers = ["count", "massKg", "mass", "glassDepth", "rimToGlass", "reading"];

    public static readonly IReadOnlyList<string> Columns = [.. fixedColumns, .. numbers, .. texts, More];

    public static void Write(JsonObject fields, CsvLines line)
    {
        foreach (var name in numbers) line.Raw(IsOwn(fields, name, JsonValueKind.Number) ? fields[name]!.ToJsonString() : "");
        foreach (var name in texts) line.Text(IsOwn(fields, name, JsonValueKind.String) ? fields[name]!.GetValue<string>() : null);
        var rest = new JsonObject(fields.Where(f => !IsOwn(fields, f.Key, JsonValueKind.Number, numbers) && !IsOwn(fields, f.Key, JsonValueKind.String, texts))
            .Select(f => KeyValuePair.Create(f.Key, f.Value?.DeepClone())));
        line.Text(rest.Count == 0 ? null : rest.ToJsonString());
    }

    static bool IsOwn(JsonObject fields, string name, JsonValueKind kind, string[]? columns = null) =>
        (columns is null || columns.Contains(name)) && fields[name] is { } value && value.GetValueKind() == kind
        // An empty text, or one with blanks around it, would not come back from a cell.
        && (kind != JsonValueKind.String || value.GetValue<string>() is { Length: > 0 } text && text.Trim() == text);

    /// <returns>The entry as an object such as devices send, or why the cells are none.</returns>
    public static (JsonObject Entry, string? Problem) Read(CsvRows row)
    {
        var entry = new JsonObject();
        try
        {
            if (row[More] is { } more)
            {
                if (JsonNode.Parse(CellText.Plain(more)) is not JsonObject rest) return (entry, $"'{More}' is no JSON object: write one such as {{\"gathers\":{{\"small\":12}}}}, or leave it empty");
                entry = rest;
            }
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            return (entry, $"'{More}' is no JSON object: write one such as {{\"gathers\":{{\"small\":12}}}}, or leave it empty");
        }
        foreach (var name in fixedColumns.Concat(texts))
            if (row[name] is { } text && name != "appliance") entry[name] = CellText.Plain(text);
        foreach (var name in numbers)
        {
            if (row[name] is not { } text) continue;
            if (Number(row.HasDecimalComma ? text.Replace(',', '.') : text) is not { } number) return (entry, $"'{name}' is '{text}': write a number such as 12.5");
            entry[name] = number;
        }
        return (entry, null);
    }

    static JsonNode? Number(string text)
    {
        try
        {
            return JsonNode.Parse(text) is { } node && node.GetValueKind() == JsonValueKind.Number ? node : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
