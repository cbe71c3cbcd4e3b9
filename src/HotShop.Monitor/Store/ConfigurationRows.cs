using System.Text.Json;
using System.Text.Json.Serialization;
using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Store;

/// <summary>Every configuration that was in force, from the store's rows.</summary>
static class ConfigurationRows
{
    /// <summary>A key that a later version dropped must not hide the rest of what was in force.</summary>
    static readonly JsonSerializerOptions lenient = new(ConfigurationFile.Json) { UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip, RespectNullableAnnotations = false };

    /// <summary>Keeps what is in force from now on, where it differs from what was.</summary>
    public static void Keep(StudioStore store, StudioPlan plan, Instant now) => store.KeepConfiguration(JsonSerializer.Serialize(plan.Configuration, ConfigurationFile.Json), now);

    public static PlanHistory History(IStoreReader store, StudioPlan today) => new(today, Read(store));

    /// <returns>In order of time; a row that cannot be read is left out, and what was in force before it holds on.</returns>
    public static IReadOnlyList<(Instant From, StudioConfiguration Configuration)> Read(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT valid_from, json FROM configuration ORDER BY valid_from";
        using var rows = command.ExecuteReader();
        var kept = new List<(Instant, StudioConfiguration)>();
        while (rows.Read())
            if (Parse(rows.GetString(1)) is { } configuration) kept.Add((rows.GetInstant(0), configuration));
        return kept;
    }

    static StudioConfiguration? Parse(string json)
    {
        try
        {
            return JsonSerializer.Deserialize<StudioConfiguration>(json, lenient);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
