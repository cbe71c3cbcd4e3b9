using System.Text.Json.Nodes;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>An entry of the logbook. Entries are never changed: a correction points at what it corrects.</summary>
/// <param name="Id">Made by whoever logs it: the same id is the same entry.</param>
/// <param name="Entry">gather, tally, charge, dip, ladle-out, returned-glass, mode, meter-reading, pot-changed, calibration, repair, note or correction.</param>
/// <param name="Fields">The rest, as checked: e.g. size and count of a gather.</param>
public sealed record LogEntry(long Sequence, string Id, string Appliance, string Entry, Instant At, string? Who, JsonObject Fields, Instant ArrivedAt);

/// <summary>Reacts to new log entries inside the transaction that stores them.</summary>
public interface ILogbookStage
{
    void React(LogEntry entry, WriteScope scope);
}
