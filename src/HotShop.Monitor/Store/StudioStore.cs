using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.Configuration;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Store;

/// <summary>
/// The SQLite file of a studio and its lock. WAL with synchronous=FULL: what was committed survives a power cut
/// (as far as the disk keeps its word). Readers open beside the one writer.
/// </summary>
public sealed class StudioStore : IStoreReader, IDisposable
{
    public const string FileName = "hotshop.db";

    readonly StoreLock storeLock;
    readonly string readText;

    StudioStore(StoreLock storeLock, string path, Ballast ballast)
    {
        this.storeLock = storeLock;
        Path = path;
        Ballast = ballast;
        readText = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = true, DefaultTimeout = 10 }.ToString();
    }

    public string Path { get; }

    internal Ballast Ballast { get; }

    /// <summary>Opens or makes the store of a data folder.</summary>
    /// <param name="isDemo">A demo's store is marked; a real service refuses it, so that invented glass is never mixed with real.</param>
    /// <exception cref="StoreException">Locked, newer, damaged, a demo's, or not writable: one line says which and what to do.</exception>
    public static StudioStore Open(StudioPlan plan, bool isDemo)
    {
        try
        {
            Directory.CreateDirectory(plan.DataDirectory);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            throw new StoreException($"{plan.DataDirectory}: cannot be made ({cause.Message}); name a folder the service may write in 'dataDirectory'", cause);
        }
        var storeLock = StoreLock.Take(plan.DataDirectory);
        try
        {
            var path = System.IO.Path.Combine(plan.DataDirectory, FileName);
            Prepare(path);
            Migrations.Apply(path);
            var store = new StudioStore(storeLock, path, new Ballast(plan.DataDirectory, plan.Configuration.Store.BallastMebibytes));
            store.CheckDemoMark(isDemo);
            store.Ballast.Restore();
            return store;
        }
        catch (SqliteException cause)
        {
            storeLock.Dispose();
            throw new StoreException($"{plan.DataDirectory}: the store cannot be opened ({cause.Message}); check the disk, or restore a backup", cause);
        }
        catch
        {
            storeLock.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Page size and auto_vacuum can only be chosen before the first table is made. Small pages: a commit writes whole pages, and a reading
    /// that comes alone fills little of one (docs/figures.md has the bytes per reading).
    /// </summary>
    static void Prepare(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        Run(connection, "PRAGMA page_size=1024");
        Run(connection, "PRAGMA auto_vacuum=INCREMENTAL");
        Run(connection, "PRAGMA journal_mode=WAL");
    }

    void CheckDemoMark(bool isDemo)
    {
        using var connection = OpenWriter();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT value FROM fact WHERE name = 'demo'";
        var isMarked = command.ExecuteScalar() is not null;
        command.CommandText = "SELECT count(*) FROM configuration";
        var isUsed = (long)command.ExecuteScalar()! > 0;
        if (isMarked && !isDemo)
            throw new StoreException($"{Path}: this store holds a demo's invented readings; name another data folder for the real studio");
        if (isDemo && isUsed && !isMarked)
            throw new StoreException($"{Path}: this store holds a real studio's readings; name another folder with --data for the demo");
        if (isDemo && !isMarked) Run(connection, "INSERT INTO fact VALUES ('demo', 'yes')");
    }

    /// <summary>Time of the last reading in a data folder, without taking its lock; null where there is no store or no reading.</summary>
    public static Instant? NewestReading(string dataDirectory)
    {
        var path = System.IO.Path.Combine(dataDirectory, FileName);
        if (!File.Exists(path)) return null;
        using var connection = new SqliteConnection($"Data Source={path};Mode=ReadWrite;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE name IN ('arrival', 'reading')";
        if ((long)command.ExecuteScalar()! < 2) return null;
        command.CommandText = "SELECT max(at) FROM (SELECT max(at) AS at FROM reading UNION ALL SELECT max(at) FROM arrival)";
        return command.ExecuteScalar() is long newest ? Columns.FromMicroseconds(newest) : null;
    }

    /// <summary>Keeps what was in force: a snapshot whenever the configuration's hash changes.</summary>
    public void KeepConfiguration(string json, Instant now)
    {
        var hash = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(json)));
        using var connection = OpenWriter();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT hash FROM configuration ORDER BY valid_from DESC LIMIT 1";
        if (command.ExecuteScalar() as string == hash) return;
        command.CommandText = "INSERT OR REPLACE INTO configuration VALUES ($at, $hash, $json)";
        command.Parameters.AddWithValue("$at", now.ToMicroseconds());
        command.Parameters.AddWithValue("$hash", hash);
        command.Parameters.AddWithValue("$json", json);
        command.ExecuteNonQuery();
    }

    internal SqliteConnection OpenWriter()
    {
        // Without a time-out of its own the library would try for half a minute after busy_timeout, and nobody would hear that nothing is stored.
        var connection = new SqliteConnection($"Data Source={Path};Pooling=False;Default Timeout=5");
        connection.Open();
        // 4000 pages are 4 MB: the WAL is copied back that often, so it stays small.
        foreach (var pragma in new[] { "synchronous=FULL", "busy_timeout=5000", "foreign_keys=ON", "wal_autocheckpoint=4000", "journal_size_limit=33554432", "cache_size=-16000" })
            Run(connection, "PRAGMA " + pragma);
        return connection;
    }

    public SqliteConnection Open()
    {
        var connection = new SqliteConnection(readText);
        connection.Open();
        Run(connection, "PRAGMA query_only=ON");
        return connection;
    }

    /// <summary>Bytes of the database and of its write-ahead log.</summary>
    public (long Database, long Log) Sizes()
    {
        var log = new FileInfo(Path + "-wal");
        return (new FileInfo(Path).Length, log.Exists ? log.Length : 0);
    }

    internal static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public void Dispose()
    {
        SqliteConnection.ClearPool(new SqliteConnection(readText));
        storeLock.Dispose();
    }
}
