using System.Globalization;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.History.Backup;

/// <summary>What a backup says of itself.</summary>
/// <param name="IsDemo">Invented readings.</param>
public sealed record BackupLabel(Instant? MadeAt, string? Site, bool IsDemo, Instant? NewestReading);

/// <summary>
/// A consistent copy of a store as one file, made while a service writes it: the service neither stops nor waits. The copy is checked from end to end
/// before it gets its name, so a file with the name of a backup is one.
/// </summary>
static class StoreCopy
{
    /// <param name="databasePath">Of the store; nothing in it is changed.</param>
    /// <param name="target">Replaced when the copy is complete and sound.</param>
    /// <exception cref="StoreException">The store cannot be read, or the copy is not sound; the target is as it was.</exception>
    public static void Make(string databasePath, string target, string site, Instant now)
    {
        var aside = $"{Path.GetFullPath(target)}.part";
        Remove(aside);
        try
        {
            // Only the owner's: it holds the people's numbers as the configuration has them.
            if (!OperatingSystem.IsWindows()) new FileStream(aside, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite }).Dispose();
            using (var from = new SqliteConnection($"Data Source={databasePath};Pooling=False;Default Timeout=30"))
            using (var to = new SqliteConnection($"Data Source={aside};Pooling=False"))
            {
                from.Open();
                to.Open();
                from.BackupDatabase(to);
                // One file, no log beside it; nothing of it is lost when only the file is carried away.
                StudioStore.Run(to, "PRAGMA journal_mode=DELETE");
                Label(to, "backup-at", InstantPattern.ExtendedIso.Format(now));
                Label(to, "backup-site", site);
                RequireSound(to, aside);
            }
            using (var file = new FileStream(aside, FileMode.Open, FileAccess.ReadWrite)) file.Flush(flushToDisk: true);
            File.Move(aside, target, overwrite: true);
        }
        catch (SqliteException failure)
        {
            throw new StoreException($"{target}: no backup was made ({failure.Message}); make room, or check the disk", failure);
        }
        finally
        {
            Remove(aside);
        }
    }

    /// <exception cref="StoreException">The file is no sound store of this or an older version.</exception>
    public static BackupLabel Check(string path)
    {
        if (!File.Exists(path)) throw new StoreException($"{path}: no such file; name a backup");
        try
        {
            using var connection = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=False");
            connection.Open();
            RequireSound(connection, path);
            Migrations.RequireKnown(path);
            return new BackupLabel(
                Scalar(connection, "SELECT value FROM fact WHERE name = 'backup-at'") is string at && InstantPattern.ExtendedIso.Parse(at) is { Success: true } made ? made.Value : null,
                Scalar(connection, "SELECT value FROM fact WHERE name = 'backup-site'") as string,
                Scalar(connection, "SELECT value FROM fact WHERE name = 'demo'") is not null,
                Scalar(connection, "SELECT max(at) FROM (SELECT max(at) AS at FROM arrival UNION ALL SELECT max((SELECT max(at) FROM reading WHERE series = id)) FROM series)") is long newest ? Columns.FromMicroseconds(newest) : null);
        }
        catch (SqliteException failure)
        {
            throw new StoreException($"{path}: this is no backup of a store ({failure.Message}); name another file", failure);
        }
    }

    static void RequireSound(SqliteConnection connection, string path)
    {
        if (Scalar(connection, "PRAGMA integrity_check(1)") as string is not "ok" and var found)
            throw new StoreException($"{path}: the database is damaged ({found}); check the disk, and keep the backups there are");
    }

    static void Label(SqliteConnection connection, string name, string value)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "INSERT OR REPLACE INTO fact VALUES ($name, $value)";
        command.Parameters.AddWithValue("$name", name);
        command.Parameters.AddWithValue("$value", value);
        command.ExecuteNonQuery();
    }

    static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() is var value and not DBNull ? value : null;
    }

    static void Remove(string aside)
    {
        foreach (var end in new[] { "", "-journal", "-wal", "-shm" }) File.Delete(aside + end);
    }

    /// <summary>Size as people read it.</summary>
    public static string Size(string path) => string.Create(CultureInfo.InvariantCulture, $"{new FileInfo(path).Length / 1e6:0.0} MB");
}
