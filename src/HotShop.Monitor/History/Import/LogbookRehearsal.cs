using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.History.Import;

/// <summary>
/// A second logbook, in a temporary file, into which a table is written before it is written into the real one: a correction of a row of the same table is
/// judged as it will be, and nothing is begun that cannot be finished.
/// </summary>
sealed class LogbookRehearsal : IDisposable
{
    readonly StudioPlan plan;
    readonly SqliteConnection real;

    /// <summary>The empty name is a database of SQLite's own in a temporary file.</summary>
    readonly SqliteConnection scratch = new("Data Source=;Pooling=False");

    public LogbookRehearsal(StudioPlan plan, IStoreReader store)
    {
        this.plan = plan;
        real = store.Open();
        scratch.Open();
        using var command = scratch.CreateCommand();
        command.CommandText = "CREATE TABLE log_entry (seq INTEGER PRIMARY KEY, id TEXT UNIQUE, appliance TEXT, entry TEXT, at INTEGER, who TEXT, fields TEXT, corrects TEXT, arrived INTEGER); CREATE INDEX log_entry_corrects ON log_entry (corrects); BEGIN";
        command.ExecuteNonQuery();
    }

    /// <summary>The entry of that id that is in the real logbook.</summary>
    public LogEntry? Before(string id) => LogRows.WithCorrections(real, id).FirstOrDefault(e => e.Id == id);

    /// <returns>Null where the entry can be logged after all those that were asked about before it.</returns>
    public string? Problem(WireLogEntry entry, Instant now)
    {
        if (Before(entry.Id!) is not null || LogRows.WithCorrections(scratch, entry.Id!).Any(e => e.Id == entry.Id)) return null;
        var of = entry.Entry == "correction" ? entry.Fields["of"]!.GetValue<string>() : null;
        if (of is not null) Bring(of);
        if (LogbookBook.Problem(entry, plan.Appliance(entry.Appliance)!, entry.At!.Value, now, scratch) is { } problem) return problem;
        Insert(new LogEntry(0, entry.Id!, entry.Appliance, entry.Entry, entry.At!.Value, entry.Who, entry.Fields, now));
        return null;
    }

    /// <summary>What the real logbook says of an entry that is corrected.</summary>
    void Bring(string id)
    {
        foreach (var entry in LogRows.WithCorrections(real, id)) Insert(entry);
    }

    void Insert(LogEntry entry)
    {
        using var command = scratch.CreateCommand();
        command.CommandText = "INSERT OR IGNORE INTO log_entry (id, appliance, entry, at, who, fields, corrects, arrived) VALUES ($id, $appliance, $entry, $at, $who, $fields, $corrects, 0)";
        command.Parameters.AddWithValue("$id", entry.Id);
        command.Parameters.AddWithValue("$appliance", entry.Appliance);
        command.Parameters.AddWithValue("$entry", entry.Entry);
        command.Parameters.AddWithValue("$at", entry.At.ToMicroseconds());
        command.Parameters.AddWithValue("$who", (object?)entry.Who ?? DBNull.Value);
        command.Parameters.AddWithValue("$fields", entry.Fields.ToJsonString());
        command.Parameters.AddWithValue("$corrects", (object?)(entry.Fields["of"] as JsonValue)?.GetValue<string>() ?? DBNull.Value);
        command.ExecuteNonQuery();
    }

    public void Dispose()
    {
        scratch.Dispose();
        real.Dispose();
    }
}
