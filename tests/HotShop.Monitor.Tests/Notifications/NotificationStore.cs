using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>A real database file with the tables of the notifications alone; commits each piece of work by itself. It need not survive a power cut.</summary>
sealed class NotificationStore : IStoreWriter, IStoreReader, IDisposable
{
    readonly TimeProvider time;
    readonly SqliteConnection connection;
    readonly SemaphoreSlim one = new(1);
    readonly string source;

    public NotificationStore(string path, TimeProvider time)
    {
        this.time = time;
        source = new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString();
        var isNew = !File.Exists(path);
        connection = new SqliteConnection(source);
        connection.Open();
        Run("PRAGMA journal_mode=WAL; PRAGMA busy_timeout=5000; PRAGMA synchronous=OFF;");
        if (!isNew) return;
        Run(Migration("0030-outbox.sql"));
        Run(Migration("0062-letter.sql"));
    }

    /// <summary>Every write fails while set, as on a full disk.</summary>
    public bool IsBroken { get; set; }

    Instant Now => time.GetUtcNow().ToInstant().Whole();

    public async Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default)
    {
        await one.WaitAsync(stop);
        try
        {
            if (IsBroken) throw new IOException("database or disk is full");
            var scope = new WriteScope(connection, Now);
            Run("BEGIN IMMEDIATE");
            try
            {
                var result = work(scope);
                Run("COMMIT");
                scope.Committed();
                return result;
            }
            catch
            {
                Run("ROLLBACK");
                scope.RolledBack();
                throw;
            }
        }
        finally
        {
            one.Release();
        }
    }

    public Task Write(Action<WriteScope> work) => Write(scope => { work(scope); return true; });

    public SqliteConnection Open()
    {
        var reader = new SqliteConnection(source);
        reader.Open();
        return reader;
    }

    public long Count(string sql)
    {
        using var reader = Open();
        using var command = reader.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    public void Dispose()
    {
        connection.Dispose();
        one.Dispose();
    }

    void Run(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    static string Migration(string file)
    {
        var assembly = typeof(WriteScope).Assembly;
        var name = assembly.GetManifestResourceNames().Single(n => n.EndsWith(file, StringComparison.Ordinal));
        using var text = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return text.ReadToEnd();
    }
}
