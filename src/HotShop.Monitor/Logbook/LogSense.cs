using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Wire;
using HotShop.Physics.Pot;

namespace HotShop.Monitor.Logbook;

/// <summary>Whether an entry whose form is right makes sense for its appliance. Pure.</summary>
static class LogSense
{
    /// <returns>Null when it does; else what is wrong and what to write.</returns>
    public static string? Problem(WireLogEntry entry, AppliancePlan appliance)
    {
        if (entry.Entry == "mode" && ModeNames.Parse(entry.Fields["mode"]?.GetValue<string>()) is null)
            return $"'{entry.Fields["mode"]}' is no mode; use one of {string.Join(", ", ModeNames.Names)}";
        if (entry.Entry is "gather" or "charge" or "dip" or "tally" or "ladle-out" or "returned-glass" or "pot-changed" && appliance.Options.Pot is null)
            return $"{appliance.Name} has no pot; log it to the furnace, or describe its pot in the configuration";
        if (UnknownSize(entry, appliance) is { } size)
            return $"'{size}' is no size of gather here; use one of {string.Join(", ", appliance.Options.Pot!.GatherKilograms.Keys)}, or give massKg";
        if (entry.Entry == "charge" && entry.Fields["material"]!.GetValue<string>() is var material && ChargeMaterial.Named(material) is null)
            return $"'{material}' is no material; use one of {string.Join(", ", ChargeMaterial.All.Select(m => m.Name))}";
        return null;
    }

    static string? UnknownSize(WireLogEntry entry, AppliancePlan appliance)
    {
        if (appliance.Options.Pot is not { } pot) return null;
        if (entry.Entry == "tally") return ((JsonObject)entry.Fields["gathers"]!).Select(g => g.Key).FirstOrDefault(size => !pot.GatherKilograms.ContainsKey(size));
        return entry.Entry == "gather" && !entry.Fields.ContainsKey("massKg") && entry.Fields["size"]?.GetValue<string>() is { } one && !pot.GatherKilograms.ContainsKey(one) ? one : null;
    }
}
