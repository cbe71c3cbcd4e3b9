using HotShop.Monitor.Store;

namespace HotShop.Monitor.Logbook;

/// <summary>A mode entry in the logbook, or a correction of one, changes the mode in force, in the same transaction.</summary>
sealed class ModeEntries(ModeBook modes) : ILogbookStage
{
    public void React(LogEntry entry, WriteScope scope)
    {
        if (entry.Entry is "mode" or "correction") modes.LookAgain(entry.Appliance, scope);
    }
}
