using System.Globalization;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.History.Backup;

/// <summary>
/// Puts a backup in the place of a store. What was there is copied aside first and never removed; the new one takes its place in one step,
/// so a power cut leaves the old store or the new one, and never none.
/// </summary>
static class StoreReturn
{
    /// <returns>The file that holds what was there; null where there was nothing.</returns>
    /// <exception cref="StoreException">A service has the store, or the backup is none, is of a newer version or of a demo. Nothing was changed.</exception>
    public static string? From(string backup, string dataDirectory, Instant now)
    {
        if (StoreCopy.Check(backup).IsDemo) throw new StoreException($"{backup}: this is the backup of a demo, with invented readings; it cannot become a studio's store");
        Directory.CreateDirectory(dataDirectory);
        using var storeLock = StoreLock.Take(dataDirectory);
        var path = Path.Combine(dataDirectory, StudioStore.FileName);
        var incoming = $"{path}.incoming";
        try
        {
            Copy(backup, incoming);
            // Checked again as it lies here, and brought to this version's form, before anything of the old store is touched.
            Migrations.Apply(incoming);
            StoreCopy.Check(incoming);
            var kept = File.Exists(path) ? Keep(path, now) : null;
            File.Move(incoming, path, overwrite: true);
            return kept;
        }
        catch (SqliteException failure)
        {
            throw new StoreException($"{dataDirectory}: nothing was restored ({failure.Message}); check the disk", failure);
        }
        finally
        {
            foreach (var end in new[] { "", "-journal", "-wal", "-shm" }) File.Delete(incoming + end);
        }
    }

    static string Keep(string path, Instant now)
    {
        var kept = string.Create(CultureInfo.InvariantCulture, $"{path}.before-restore-{now.ToDateTimeUtc():yyyyMMdd'T'HHmmss'Z'}");
        try
        {
            // What is still in the write-ahead log belongs to what was there; afterwards the log is empty and goes.
            using (var connection = new SqliteConnection($"Data Source={path};Pooling=False"))
            {
                connection.Open();
                StudioStore.Run(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
            }
            Copy(path, kept);
        }
        catch (SqliteException)
        {
            // A damaged store is the usual reason to restore: it is kept as it lies, log and all.
            Copy(path, kept);
            if (File.Exists(path + "-wal")) Copy(path + "-wal", kept + "-wal");
        }
        // The log of the old store must never meet the new one.
        File.Delete(path + "-wal");
        File.Delete(path + "-shm");
        return kept;
    }

    static void Copy(string from, string to)
    {
        File.Copy(from, to, overwrite: true);
        using var file = new FileStream(to, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
    }
}
