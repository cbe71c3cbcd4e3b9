using System.Globalization;
using Microsoft.Data.Sqlite;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>What lies in a store, read beside the service with plain SQL. Numbers come as their bits, so that equal means equal.</summary>
sealed class StoredRows(string dataDirectory)
{
    readonly string text = $"Data Source={Path.Combine(dataDirectory, "hotshop.db")};Mode=ReadOnly;Pooling=False;Default Timeout=30";

    public bool IsThere => File.Exists(Path.Combine(dataDirectory, "hotshop.db"));

    public long Count() => Number("SELECT (SELECT count(*) FROM arrival) + (SELECT count(*) FROM reading)");

    public long Conflicts() => Number("SELECT count(*) FROM conflict");

    public long Refused() => Number("SELECT count(*) FROM refused");

    public long Counter(string name) => Number($"SELECT ifnull(sum(count), 0) FROM counter WHERE name = '{name}'");

    /// <summary>Marks of hours before a moment that are still to be computed.</summary>
    public long Dirty(DateTimeOffset before) => Number($"SELECT count(*) FROM dirty WHERE hour < {before.ToUnixTimeMilliseconds() * 1000}");

    /// <summary>Every reading as channel, microseconds, bits of the value; in that order.</summary>
    public IReadOnlyList<string> Readings() => Lines("""
        SELECT s.channel, r.at, r.value FROM (SELECT series, at, value FROM arrival UNION ALL SELECT series, at, value FROM reading) r
        JOIN series s ON s.id = r.series ORDER BY s.channel, r.at
        """);

    /// <summary>The rows of all hours before a moment, with all their figures.</summary>
    public IReadOnlyList<string> Hours(DateTimeOffset before) => Lines($"""
        SELECT s.channel, h.hour, h.amount, h.covered_seconds, h.gap_seconds, h.mean, h.min, h.max, h.count, h.resets
        FROM hour h JOIN series s ON s.id = h.series WHERE h.hour < {before.ToUnixTimeMilliseconds() * 1000} ORDER BY s.channel, h.hour
        """);

    long Number(string sql)
    {
        using var connection = Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    List<string> Lines(string sql)
    {
        using var connection = Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var lines = new List<string>();
        while (rows.Read())
            lines.Add(string.Join(' ', Enumerable.Range(0, rows.FieldCount).Select(i => rows.GetValue(i) switch
            {
                double number => BitConverter.DoubleToInt64Bits(number).ToString("x16", CultureInfo.InvariantCulture),
                var other => Convert.ToString(other, CultureInfo.InvariantCulture),
            })));
        return lines;
    }

    SqliteConnection Open()
    {
        var connection = new SqliteConnection(text);
        connection.Open();
        return connection;
    }
}
