using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Store;

/// <summary>A store looked at from beside: whether a service has it or not, nothing is locked, migrated or written.</summary>
sealed class StoreView : IStoreReader
{
    readonly string readText;

    StoreView(string path) => readText = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = false, DefaultTimeout = 10 }.ToString();

    /// <exception cref="StoreException">There is none, it is not of this version's form, or it cannot be read.</exception>
    public static StoreView Open(string dataDirectory)
    {
        var path = Path.Combine(dataDirectory, StudioStore.FileName);
        if (!File.Exists(path)) throw new StoreException($"{path}: there is no store; run the service once, or name the right configuration with --config");
        Migrations.RequireUpToDate(path);
        return new StoreView(path);
    }

    public SqliteConnection Open()
    {
        var connection = new SqliteConnection(readText);
        connection.Open();
        StudioStore.Run(connection, "PRAGMA query_only=ON");
        return connection;
    }
}
