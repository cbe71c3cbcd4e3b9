using System.Text.Json;
using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>What changed from one configuration to the next, value by value, under the names that <c>dated</c> uses. Pure.</summary>
static class ConfigurationChanges
{
    public static IReadOnlyList<Difference> Within(PlanHistory plans, Instant from, Instant to)
    {
        var stretches = plans.Between(from, to);
        return [.. stretches.Zip(stretches.Skip(1)).SelectMany(pair => Between(pair.First.Plan.Configuration, pair.Second.Plan.Configuration).Select(c => new Difference(c.Key, pair.Second.From, c.Was, c.Now)))];
    }

    static IEnumerable<(string Key, string Was, string Now)> Between(StudioConfiguration was, StudioConfiguration now)
    {
        var (before, after) = (Flat(was), Flat(now));
        foreach (var key in before.Keys.Union(after.Keys).Order(StringComparer.Ordinal))
        {
            var (old, young) = (before.GetValueOrDefault(key, "nothing"), after.GetValueOrDefault(key, "nothing"));
            if (old != young) yield return (key, old, young);
        }
    }

    static Dictionary<string, string> Flat(StudioConfiguration configuration)
    {
        var flat = new Dictionary<string, string>(StringComparer.Ordinal);
        var root = JsonSerializer.SerializeToNode(configuration with { Gas = configuration.Gas.InForce() }, ConfigurationFile.Json)!.AsObject();
        foreach (var key in new[] { "gas", "appliances" }) Put(root[key], key, flat);
        return flat;
    }

    static void Put(JsonNode? node, string at, Dictionary<string, string> flat)
    {
        switch (node)
        {
            case JsonObject inner:
                foreach (var (key, value) in inner) Put(value, $"{at}.{key}", flat);
                break;
            case JsonArray list:
                for (var i = 0; i < list.Count; i++) Put(list[i], $"{at}.{(list[i] is JsonObject one && one["id"] is JsonValue id ? id.GetValue<string>() : i.ToString(System.Globalization.CultureInfo.InvariantCulture))}", flat);
                break;
            default:
                flat[at] = node?.ToJsonString() ?? "nothing";
                break;
        }
    }
}
