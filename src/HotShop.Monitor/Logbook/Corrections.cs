using System.Text.Json.Nodes;

namespace HotShop.Monitor.Logbook;

/// <summary>Works corrections into the entries they point at. The rows themselves are never touched.</summary>
public static class Corrections
{
    /// <param name="entries">In order of time; corrections of entries that are not among them do nothing.</param>
    public static IReadOnlyList<LogEntry> Apply(IReadOnlyList<LogEntry> entries)
    {
        if (!entries.Any(e => e.Entry == "correction")) return entries;
        var byId = entries.Where(e => e.Entry != "correction").ToDictionary(e => e.Id);
        // The last correction logged is the one that holds.
        foreach (var correction in entries.Where(e => e.Entry == "correction").OrderBy(e => e.Sequence))
        {
            var of = correction.Fields["of"]!.GetValue<string>();
            if (!byId.TryGetValue(of, out var original)) continue;
            var changed = correction.Fields.Where(f => f.Key is not ("of" or "text")).ToList();
            if (changed.Count == 0) byId.Remove(of);
            else byId[of] = original with { Fields = Merged(original.Fields, changed) };
        }
        return [.. byId.Values.OrderBy(e => e.At).ThenBy(e => e.Sequence)];
    }

    static JsonObject Merged(JsonObject fields, List<KeyValuePair<string, JsonNode?>> changes)
    {
        var merged = (JsonObject)fields.DeepClone();
        foreach (var (key, value) in changes) merged[key] = value?.DeepClone();
        return merged;
    }
}
