using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Takes log entries that came over the wire, inside the transaction of their message.</summary>
public interface ILogEntryStage
{
    /// <returns>Null when the entry is in the logbook (now, or from before under the same id); else why it is refused.</returns>
    string? Take(WireLogEntry entry, Instant arrivedAt, WriteScope scope);
}
