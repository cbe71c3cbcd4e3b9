using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Readings;

/// <summary>Hours of a series whose row is not, or no longer, true. Used inside write transactions only; hours in microseconds since 1970 UTC.</summary>
sealed class DirtyHours
{
    public const long Micros = 3_600_000_000;

    readonly HashSet<(int Series, long Hour)> dirty = [];

    public DirtyHours(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT series, hour FROM dirty";
        using var rows = command.ExecuteReader();
        while (rows.Read()) dirty.Add((rows.GetInt32(0), rows.GetInt64(1)));
    }

    public int Count => dirty.Count;

    /// <summary>The beginning of the hour a moment lies in.</summary>
    public static long HourOf(long micros) => micros - (micros % Micros + Micros) % Micros;

    /// <summary>Marks every hour from that of one moment to that of another, both included.</summary>
    public void Mark(int series, long first, long last, WriteScope scope)
    {
        for (var hour = HourOf(first); hour <= HourOf(last); hour += Micros) Mark(series, hour, scope);
    }

    void Mark(int series, long hour, WriteScope scope)
    {
        if (!dirty.Add((series, hour))) return;
        scope.OnRollback(() => dirty.Remove((series, hour)));
        scope.Execute("INSERT OR IGNORE INTO dirty VALUES ($series, $hour)", ("$series", series), ("$hour", hour));
    }

    /// <summary>Marked hours that have ended by a moment, oldest first.</summary>
    public IReadOnlyList<(int Series, long Hour)> EndedBy(long micros) =>
        [.. dirty.Where(d => d.Hour + Micros <= micros).OrderBy(d => d.Hour).ThenBy(d => d.Series)];

    public long? OldestOf(int series)
    {
        long? oldest = null;
        foreach (var mark in dirty) if (mark.Series == series && (oldest is null || mark.Hour < oldest)) oldest = mark.Hour;
        return oldest;
    }

    public void Clean(int series, long hour, WriteScope scope)
    {
        if (!dirty.Remove((series, hour))) return;
        scope.OnRollback(() => dirty.Add((series, hour)));
        scope.Execute("DELETE FROM dirty WHERE series = $series AND hour = $hour", ("$series", series), ("$hour", hour));
    }
}
