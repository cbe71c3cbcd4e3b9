using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Modes in force, from the logbook's newest mode entry of each appliance; the configuration's mode until there is one.</summary>
public sealed class ModeBook : IModes
{
    readonly Dictionary<string, ModeInForce> inForce = [];
    readonly Lock gate = new();

    public ModeBook(StudioPlan plan, IStoreReader store)
    {
        foreach (var appliance in plan.Appliances)
            inForce[appliance.Id] = new ModeInForce(ModeNames.Parse(appliance.Options.Mode) ?? Mode.Holding, Instant.MinValue, "configuration");
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT appliance, max(at), fields, who FROM log_entry e WHERE entry = 'mode'
            AND NOT EXISTS (SELECT 1 FROM log_entry c WHERE c.corrects = e.id) GROUP BY appliance
            """;
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            if (ModeNames.Parse(JsonNode.Parse(rows.GetString(2))?["mode"]?.GetValue<string>()) is { } mode)
                inForce[rows.GetString(0)] = new ModeInForce(mode, rows.GetInstant(1), rows.GetTextOrNull(3) ?? "");
        }
    }

    public ModeInForce Of(string appliance)
    {
        lock (gate) return inForce.TryGetValue(appliance, out var mode) ? mode : new ModeInForce(Mode.Holding, Instant.MinValue, "configuration");
    }

    /// <summary>A mode logged later than the one in force takes over; one logged for the past does not.</summary>
    internal void Adopt(string appliance, ModeInForce mode, WriteScope scope)
    {
        var before = Of(appliance);
        if (mode.Since < before.Since) return;
        Set(appliance, mode);
        scope.OnRollback(() => Set(appliance, before));
    }

    void Set(string appliance, ModeInForce mode)
    {
        lock (gate) inForce[appliance] = mode;
    }
}
