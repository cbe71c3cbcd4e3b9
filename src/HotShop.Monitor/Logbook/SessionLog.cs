using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Somebody had an appliance for a time: a renter's evening, a class.</summary>
public sealed record Session(string Id, string Who, string Appliance, Instant From, Instant To);

/// <summary>Sessions from the logbook, after corrections.</summary>
public sealed class SessionLog(IStoreReader store)
{
    /// <summary>Sessions that share time with [from, to), in the order of their beginning.</summary>
    public IReadOnlyList<Session> Between(Instant from, Instant to)
    {
        using var connection = store.Open();
        return [.. Corrections.Apply(LogRows.Sessions(connection)).Select(Read).OfType<Session>().Where(s => s.From < to && s.To > from).OrderBy(s => s.From).ThenBy(s => s.Id, StringComparer.Ordinal)];
    }

    /// <summary>Null where a correction left no sense in it.</summary>
    static Session? Read(LogEntry entry) =>
        StrictTime.Parse(entry.Fields["from"]?.GetValue<string>() ?? "") is { } from && StrictTime.Parse(entry.Fields["to"]?.GetValue<string>() ?? "") is { } to && to > from
            ? new Session(entry.Id, entry.Who ?? entry.Fields["who"]?.GetValue<string>() ?? "nobody named", entry.Appliance, from, to)
            : null;
}
