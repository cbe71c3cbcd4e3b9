using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

/// <summary>Works dated values into a configuration, and says what is wrong with them. Pure.</summary>
static class DatedValues
{
    /// <summary>What figures are computed from: only this can have held at another time. Prices carry dates of their own.</summary>
    static readonly string[] roots = ["gas", "appliances"];

    public static Instant? FirstInstant(this DatedValue value, DateTimeZone zone) => StartOf(value.From, zone);

    /// <summary>The first instant at which it holds no more.</summary>
    public static Instant? EndInstant(this DatedValue value, DateTimeZone zone) => StartOf(value.Until, zone);

    public static bool HoldsAt(this DatedValue value, Instant at, DateTimeZone zone) =>
        (value.FirstInstant(zone) is not { } first || first <= at) && (value.EndInstant(zone) is not { } end || at < end);

    static Instant? StartOf(string? day, DateTimeZone zone) =>
        day is not null && LocalDatePattern.Iso.Parse(day) is { Success: true } parsed ? zone.AtStartOfDay(parsed.Value).ToInstant() : null;

    /// <returns>The configuration with the values at their places; the later of two for one place wins. A place that is not there is left out.</returns>
    /// <exception cref="JsonException">A value does not fit its place.</exception>
    public static StudioConfiguration Apply(StudioConfiguration configuration, IEnumerable<DatedValue> values)
    {
        var list = values.ToList();
        if (list.Count == 0) return configuration;
        var root = JsonSerializer.SerializeToNode(configuration, ConfigurationFile.Json)!;
        foreach (var value in list) Put(root, value);
        return root.Deserialize<StudioConfiguration>(ConfigurationFile.Json)!;
    }

    /// <returns>Null when the place is there; else how far the key leads.</returns>
    static string? Put(JsonNode root, DatedValue value)
    {
        var steps = value.Key.Split('.');
        var at = root;
        for (var i = 0; i < steps.Length; i++)
        {
            if (i == steps.Length - 1 && at is JsonObject place)
            {
                place[steps[i]] = JsonNode.Parse(value.Value.GetRawText());
                return null;
            }
            JsonNode? next = at switch
            {
                JsonObject inner when inner[steps[i]] is { } known => known,
                // An alarm that keeps its defaults has no entry yet.
                JsonObject inner when i > 0 && steps[i - 1] == "alarms" => inner[steps[i]] = new JsonObject(),
                JsonArray list => list.FirstOrDefault(e => e?["id"]?.GetValueKind() == JsonValueKind.String && e["id"]!.GetValue<string>() == steps[i]),
                _ => null,
            };
            if (next is null) return string.Join('.', steps[..(i + 1)]);
            at = next;
        }
        return value.Key;
    }

    public static void Check(ProblemList found, StudioConfiguration configuration)
    {
        var bare = configuration with { Dated = [] };
        for (var i = 0; i < configuration.Dated.Count; i++)
        {
            var (value, where) = (configuration.Dated[i], $"dated[{i}]");
            foreach (var (key, day) in new[] { ("from", value.From), ("until", value.Until) })
                if (day is not null && !LocalDatePattern.Iso.Parse(day).Success) found.Add($"{where}.{key}", $"'{day}' is no date", "write YYYY-MM-DD");
            if (value is { From: { } from, Until: { } until } && LocalDatePattern.Iso.Parse(from).Success && LocalDatePattern.Iso.Parse(until).Success && string.CompareOrdinal(from, until) >= 0)
                found.Add(where, $"it ends on {until}, not after it begins", "'until' is the first day it held no more");
            if (!roots.Contains(value.Key.Split('.')[0]) || !value.Key.Contains('.', StringComparison.Ordinal))
                found.Add($"{where}.key", $"'{value.Key}' is nothing that figures are computed from", $"begin with {string.Join(" or ", roots.Select(r => r + "."))}");
            else Place(found, where, value, bare);
        }
    }

    static void Place(ProblemList found, string where, DatedValue value, StudioConfiguration bare)
    {
        var root = JsonSerializer.SerializeToNode(bare, ConfigurationFile.Json)!;
        if (Put(root, value) is { } missing)
        {
            found.Add($"{where}.key", $"there is no '{missing}' in this file", "write the keys as they stand in it, and ids where lists are");
            return;
        }
        try
        {
            var before = ConfigurationCheck.Problems(bare, "").Select(p => p.ToString()).ToHashSet(StringComparer.Ordinal);
            var with = root.Deserialize<StudioConfiguration>(ConfigurationFile.Json)!;
            foreach (var problem in ConfigurationCheck.Problems(with, "").Where(p => !before.Contains(p.ToString())))
                found.Add($"{where}.value", problem.What, problem.WhatToDo);
            var rule = "the past only: write 'until', or write the value at its own place";
            if (value.Until is null && JsonSerializer.Serialize(with, ConfigurationFile.Json) != JsonSerializer.Serialize(bare, ConfigurationFile.Json))
                found.Add($"{where}.until", $"'{value.Key}' would hold today as well, and the file says otherwise", rule);
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException)
        {
            found.Add($"{where}.value", $"it does not fit '{value.Key}'", "write it as it would stand at its own place");
        }
    }
}
