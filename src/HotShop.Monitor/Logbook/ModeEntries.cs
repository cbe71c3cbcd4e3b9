using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Logbook;

/// <summary>A mode entry in the logbook changes the mode in force, in the same transaction.</summary>
sealed class ModeEntries(ModeBook modes) : ILogbookStage
{
    public void React(LogEntry entry, WriteScope scope)
    {
        if (entry.Entry == "mode" && ModeNames.Parse(entry.Fields["mode"]?.GetValue<string>()) is { } mode)
            modes.Adopt(entry.Appliance, new ModeInForce(mode, entry.At, entry.Who ?? ""), scope);
    }
}
