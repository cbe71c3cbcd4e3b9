using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>A database with all tables of the service that lives as long as this object; commits each piece of work by itself.</summary>
sealed class MemoryStore : IStoreWriter, IStoreReader, IDisposable
{
    readonly string source = $"Data Source=file:{Guid.NewGuid():N}?mode=memory&cache=shared";
    readonly SqliteConnection connection;

    public MemoryStore()
    {
        connection = Open();
        var assembly = typeof(WriteScope).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.EndsWith(".sql", StringComparison.Ordinal)).OrderBy(n => n.Split(".Migrations.")[^1], StringComparer.Ordinal))
        {
            using var text = new StreamReader(assembly.GetManifestResourceStream(name)!);
            Run(text.ReadToEnd());
        }
    }

    public Instant Now { get; set; } = Story.Start;

    /// <summary>The commit fails, after the work was done.</summary>
    public bool IsFull { get; set; }

    public Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default)
    {
        var scope = new WriteScope(connection, Now);
        Run("BEGIN");
        try
        {
            var result = work(scope);
            if (IsFull) throw new IOException("database or disk is full");
            Run("COMMIT");
            scope.Committed();
            return Task.FromResult(result);
        }
        catch (Exception failure)
        {
            Run("ROLLBACK");
            scope.RolledBack();
            return Task.FromException<T>(failure);
        }
    }

    public SqliteConnection Open()
    {
        var opened = new SqliteConnection(source);
        opened.Open();
        return opened;
    }

    public long Count(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    public void Run(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public void Dispose() => connection.Dispose();
}
