using System.Text.Json.Nodes;
using HotShop.Monitor.Wire;
using NodaTime;

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
        foreach (var correction in Standing(entries))
        {
            var of = Of(correction);
            if (!byId.TryGetValue(of, out var original)) continue;
            var changed = Changes(correction.Fields);
            if (changed.Count == 0) byId.Remove(of);
            else byId[of] = original with { At = MovedTo(correction.Fields) ?? original.At, Who = DoneBy(correction.Fields) ?? original.Who, Fields = Merged(original.Fields, changed) };
        }
        return [.. byId.Values.OrderBy(e => e.At).ThenBy(e => e.Sequence)];
    }

    /// <summary>Corrections that were not struck out by a later one, in the order they were logged.</summary>
    static Stack<LogEntry> Standing(IReadOnlyList<LogEntry> entries)
    {
        var struck = new HashSet<string>(StringComparer.Ordinal);
        var standing = new Stack<LogEntry>();
        foreach (var correction in entries.Where(e => e.Entry == "correction").OrderByDescending(e => e.Sequence))
        {
            if (struck.Contains(correction.Id)) continue;
            standing.Push(correction);
            if (Changes(correction.Fields).Count == 0) struck.Add(Of(correction));
        }
        return standing;
    }

    static string Of(LogEntry correction) => correction.Fields["of"]!.GetValue<string>();

    /// <summary>What a correction changes; nothing: it strikes the entry out.</summary>
    internal static List<KeyValuePair<string, JsonNode?>> Changes(JsonObject fields) => [.. fields.Where(f => f.Key is not ("of" or "text"))];

    /// <summary>When it really was, where a correction says so (<c>at</c>).</summary>
    internal static Instant? MovedTo(JsonObject correction) => correction["of"] is not null && correction["at"] is { } at ? StrictTime.Parse(at.GetValue<string>()) : null;

    /// <summary>Who it really was, where a correction says so (<c>by</c>).</summary>
    static string? DoneBy(JsonObject correction) => correction["by"]?.GetValue<string>();

    /// <summary>Fields with the changes in them; a null takes a field away.</summary>
    internal static JsonObject Merged(JsonObject fields, List<KeyValuePair<string, JsonNode?>> changes)
    {
        var merged = (JsonObject)fields.DeepClone();
        foreach (var (key, value) in changes.Where(c => c.Key is not ("at" or "by")))
            if (value is null) merged.Remove(key);
            else merged[key] = value.DeepClone();
        return merged;
    }
}
