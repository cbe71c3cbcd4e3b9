using System.Text.Json.Nodes;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Rows of the logbook as entries.</summary>
static class LogRows
{
    public const string Columns = "seq, id, appliance, entry, at, who, fields, arrived";

    public static LogEntry Read(SqliteDataReader row) => new(
        row.GetInt64(0), row.GetString(1), row.GetString(2), row.GetString(3), row.GetInstant(4), row.GetTextOrNull(5),
        (JsonObject)JsonNode.Parse(row.GetString(6))!, row.GetInstant(7));

    /// <summary>An entry, its corrections and theirs; empty where there is none of that id.</summary>
    public static IReadOnlyList<LogEntry> WithCorrections(SqliteConnection connection, string id) =>
        Query(connection, "id = $key OR corrects = $key OR corrects IN (SELECT id FROM log_entry WHERE corrects = $key)", id);

    /// <summary>The newest mode entries of an appliance, with their corrections and those of them.</summary>
    public static IReadOnlyList<LogEntry> NewestModes(SqliteConnection connection, string appliance) => Query(connection, """
        id IN (SELECT id FROM newest) OR corrects IN (SELECT id FROM newest) OR corrects IN (SELECT id FROM log_entry WHERE corrects IN (SELECT id FROM newest))
        """, appliance);

    /// <summary>Mode entries of an appliance in [from, to) and the last ones before, more than one as corrections may strike some; with their corrections and those of them.</summary>
    public static IReadOnlyList<LogEntry> ModesUntil(SqliteConnection connection, string appliance, Instant from, Instant to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            WITH asked AS (SELECT id FROM log_entry WHERE entry = 'mode' AND appliance = $key AND at < $to AND at >= coalesce(
                (SELECT at FROM log_entry WHERE entry = 'mode' AND appliance = $key AND at <= $from ORDER BY at DESC LIMIT 1 OFFSET 20), -9223372036854775808)),
            correcting AS (SELECT id, corrects FROM log_entry WHERE corrects IN (SELECT id FROM asked))
            SELECT {Columns} FROM log_entry WHERE id IN (SELECT id FROM asked) OR id IN (SELECT id FROM correcting) OR corrects IN (SELECT id FROM correcting) ORDER BY at, seq
            """;
        command.Parameters.AddWithValue("$key", appliance);
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        return All(command);
    }

    /// <summary>Entries of [from, to) in the order in which they were logged, one at a time.</summary>
    public static IEnumerable<LogEntry> AsLogged(SqliteConnection connection, string? appliance, Instant from, Instant to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {Columns} FROM log_entry WHERE at >= $from AND at < $to AND ($appliance IS NULL OR appliance = $appliance) ORDER BY seq";
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        command.Parameters.AddWithValue("$appliance", (object?)appliance ?? DBNull.Value);
        using var rows = command.ExecuteReader();
        while (rows.Read()) yield return Read(rows);
    }

    /// <summary>All sessions with their corrections and those of them.</summary>
    public static IReadOnlyList<LogEntry> Sessions(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            WITH asked AS (SELECT id FROM log_entry WHERE entry = 'session'),
            correcting AS (SELECT id FROM log_entry WHERE corrects IN (SELECT id FROM asked))
            SELECT {Columns} FROM log_entry WHERE id IN (SELECT id FROM asked) OR id IN (SELECT id FROM correcting) OR corrects IN (SELECT id FROM correcting) ORDER BY at, seq
            """;
        return All(command);
    }

    /// <summary>All meter readings of an appliance, with their corrections and those of them.</summary>
    public static IReadOnlyList<LogEntry> MeterReadings(SqliteConnection connection, string appliance)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            WITH asked AS (SELECT id FROM log_entry WHERE entry = 'meter-reading' AND appliance = $key),
            correcting AS (SELECT id FROM log_entry WHERE corrects IN (SELECT id FROM asked))
            SELECT {Columns} FROM log_entry WHERE id IN (SELECT id FROM asked) OR id IN (SELECT id FROM correcting) OR corrects IN (SELECT id FROM correcting) ORDER BY at, seq
            """;
        command.Parameters.AddWithValue("$key", appliance);
        return All(command);
    }

    static List<LogEntry> Query(SqliteConnection connection, string where, string key)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            WITH newest AS (SELECT id FROM log_entry WHERE entry = 'mode' AND appliance = $key ORDER BY at DESC, seq DESC LIMIT 50)
            SELECT {Columns} FROM log_entry WHERE {where} ORDER BY at, seq
            """;
        command.Parameters.AddWithValue("$key", key);
        return All(command);
    }

    static List<LogEntry> All(SqliteCommand command)
    {
        using var rows = command.ExecuteReader();
        var entries = new List<LogEntry>();
        while (rows.Read()) entries.Add(Read(rows));
        return entries;
    }
}
