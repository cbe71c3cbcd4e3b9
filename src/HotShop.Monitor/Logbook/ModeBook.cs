using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Modes in force, from the logbook's newest mode entry of each appliance after corrections; the configuration's mode until there is one.</summary>
public sealed class ModeBook : IModes
{
    readonly Dictionary<string, ModeInForce> configured = [];
    readonly Dictionary<string, ModeInForce> inForce = [];
    readonly Lock gate = new();

    public ModeBook(StudioPlan plan, IStoreReader store)
    {
        using var connection = store.Open();
        foreach (var appliance in plan.Appliances)
        {
            configured[appliance.Id] = new ModeInForce(ModeNames.Parse(appliance.Options.Mode) ?? Mode.Holding, Instant.MinValue, "configuration");
            inForce[appliance.Id] = FromLog(appliance.Id, connection);
        }
    }

    public ModeInForce Of(string appliance)
    {
        lock (gate) return inForce.TryGetValue(appliance, out var mode) ? mode : Configured(appliance);
    }

    /// <summary>Looks at the log again: a mode logged later than the one in force takes over, one logged for the past does not, and a correction counts.</summary>
    internal void LookAgain(string appliance, WriteScope scope)
    {
        var before = Of(appliance);
        Set(appliance, FromLog(appliance, scope.Connection));
        scope.OnRollback(() => Set(appliance, before));
    }

    ModeInForce FromLog(string appliance, SqliteConnection connection)
    {
        var holds = Corrections.Apply(LogRows.NewestModes(connection, appliance));
        return holds.Count > 0 && ModeNames.Parse(holds[^1].Fields["mode"]?.GetValue<string>()) is { } mode
            ? new ModeInForce(mode, holds[^1].At, holds[^1].Who ?? "")
            : Configured(appliance);
    }

    ModeInForce Configured(string appliance) =>
        configured.TryGetValue(appliance, out var mode) ? mode : new ModeInForce(Mode.Holding, Instant.MinValue, "configuration");

    void Set(string appliance, ModeInForce mode)
    {
        lock (gate) inForce[appliance] = mode;
    }
}
