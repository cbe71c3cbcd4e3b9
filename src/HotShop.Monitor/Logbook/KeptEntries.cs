using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Finds the entry that is in the logbook already when the same one comes again.</summary>
static class KeptEntries
{
    /// <summary>A device that was away longer has forgotten what it had in flight, and numbers its messages anew.</summary>
    static readonly Duration InFlight = Duration.FromDays(1);

    /// <param name="at">Time of the entry.</param>
    /// <returns>The kept one, or null where this is a new entry.</returns>
    public static LogEntry? Of(WireLogEntry entry, Instant at, Instant arrivedAt, SqliteConnection connection)
    {
        if (entry.Id is { } id) return One(connection, "id = $key", ("$key", id));
        if (entry.Delivery is not { } delivery) return null;
        if (delivery.IsDated && One(connection, "id = $key", ("$key", delivery.Key)) is { } dated) return dated;
        if (delivery.CameAgain && One(connection, "id >= $key || '.' AND id < $key || '/' AND arrived >= $since", ("$key", delivery.Key), ("$since", (arrivedAt - InFlight).ToMicroseconds())) is { } repeated)
            return repeated;
        return delivery.Settle == Duration.Zero ? null : One(connection,
            "appliance = $appliance AND at > $from AND at < $to AND id >= $key || '.' AND id < $key || '/'", ("$key", delivery.Source), ("$appliance", entry.Appliance),
            ("$from", (at - delivery.Settle).ToMicroseconds()), ("$to", (at + delivery.Settle).ToMicroseconds()));
    }

    static LogEntry? One(SqliteConnection connection, string where, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {LogRows.Columns} FROM log_entry WHERE {where} ORDER BY seq DESC LIMIT 1";
        foreach (var (name, value) in values) command.Parameters.AddWithValue(name, value);
        using var rows = command.ExecuteReader();
        return rows.Read() ? LogRows.Read(rows) : null;
    }
}
