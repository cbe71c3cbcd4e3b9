using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Store;

/// <summary>Prepared commands of one connection by their text: the same few run thousands of times an hour.</summary>
sealed class StatementCache(SqliteConnection connection) : IDisposable
{
    readonly Dictionary<string, SqliteCommand> prepared = new(StringComparer.Ordinal);

    public SqliteCommand Take(string sql, ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        if (!prepared.TryGetValue(sql, out var command))
        {
            command = connection.CreateCommand();
            command.CommandText = sql;
            foreach (var (name, _) in parameters) command.Parameters.Add(new SqliteParameter { ParameterName = name });
            prepared[sql] = command;
        }
        for (var i = 0; i < parameters.Length; i++) command.Parameters[i].Value = parameters[i].Value ?? DBNull.Value;
        return command;
    }

    public void Dispose()
    {
        foreach (var command in prepared.Values) command.Dispose();
        prepared.Clear();
    }
}
