using System.Text.Json.Nodes;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;

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

    static List<LogEntry> Query(SqliteConnection connection, string where, string key)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            WITH newest AS (SELECT id FROM log_entry WHERE entry = 'mode' AND appliance = $key ORDER BY at DESC, seq DESC LIMIT 50)
            SELECT {Columns} FROM log_entry WHERE {where} ORDER BY at, seq
            """;
        command.Parameters.AddWithValue("$key", key);
        using var rows = command.ExecuteReader();
        var entries = new List<LogEntry>();
        while (rows.Read()) entries.Add(Read(rows));
        return entries;
    }
}
