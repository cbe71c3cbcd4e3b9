using System.Text.Json;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>The project's own payload: an object with value, unit and time, an array of them, or a value in quotes.</summary>
static class OwnRows
{
    const string Example = "{\"value\":1148.6,\"unit\":\"Cel\",\"time\":\"2026-03-01T02:13:05.120Z\"}";

    // A key that is nearly ours is a mistake with consequences: a time that is not read makes a whole backlog look fresh.
    static readonly Dictionary<string, string> Misspelt = new(StringComparer.OrdinalIgnoreCase)
    {
        ["value"] = "value", ["val"] = "value", ["unit"] = "unit", ["units"] = "unit", ["uom"] = "unit", ["time"] = "time",
        ["timestamp"] = "time", ["ts"] = "time", ["datetime"] = "time", ["date"] = "time", ["at"] = "time",
    };

    public static void Read(JsonElement root, ChannelPlan channel, RowCollector rows)
    {
        switch (root.ValueKind)
        {
            case JsonValueKind.Array when root.GetArrayLength() == 0:
                rows.Refuse(channel, "the array is empty: there is nothing in it to store");
                break;
            case JsonValueKind.Array:
                var index = 0;
                foreach (var row in root.EnumerateArray()) Row(row, channel, rows, index++);
                break;
            case JsonValueKind.Object:
                Row(root, channel, rows, null);
                break;
            default:
                rows.Add(channel, WireValue.Of(root, channel.Quantity.IsState()), null, null);
                break;
        }
    }

    static void Row(JsonElement row, ChannelPlan channel, RowCollector rows, int? index)
    {
        if (row.ValueKind != JsonValueKind.Object)
        {
            rows.Refuse(channel, $"'{Shown.Short(row.GetRawText())}' is no object: a row is written {Example}", index);
            return;
        }
        JsonElement? value = null, unit = null, time = null;
        foreach (var property in row.EnumerateObject())
        {
            switch (property.Name)
            {
                case "value": value = property.Value; break;
                case "unit": unit = property.Value; break;
                case "time": time = property.Value; break;
                case var other when Misspelt.TryGetValue(other, out var meant):
                    rows.Refuse(channel, $"the key '{other}' is not read: call it '{meant}'", index);
                    return;
                default: break;     // Devices add their own: signal strength, battery, sequence.
            }
        }
        if (value is null) rows.Refuse(channel, $"there is no 'value': write {Example}", index);
        else if (unit is { ValueKind: not (JsonValueKind.String or JsonValueKind.Null) } odd)
            rows.Refuse(channel, $"the unit is {Shown.Short(odd.GetRawText())}: write it in quotes, such as \"Cel\"", index);
        else if (!TryTime(time, out var at, out var problem)) rows.Refuse(channel, problem, index);
        else rows.Add(channel, WireValue.Of(value.Value, channel.Quantity.IsState()), unit?.GetString(), at, index);
    }

    /// <returns>False with a problem where there is a time that cannot be read; a missing or null time is no problem.</returns>
    public static bool TryTime(JsonElement? given, out Instant? at, out string problem)
    {
        at = null;
        problem = "";
        if (given is not { ValueKind: not JsonValueKind.Null } time) return true;
        at = time.ValueKind == JsonValueKind.String ? StrictTime.Parse(time.GetString()) : null;
        if (at is not null) return true;
        var why = time.ValueKind == JsonValueKind.Number ? "is a number, and seconds and milliseconds look alike" : "is no time with offset";
        problem = $"the time {Shown.Short(time.GetRawText())} {why}: write it like \"2026-03-01T02:13:05.120Z\", or leave it out";
        return false;
    }
}
