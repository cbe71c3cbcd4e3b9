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
}
