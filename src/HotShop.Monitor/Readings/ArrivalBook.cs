using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>What became of a reading offered to the store.</summary>
public enum ArrivalResult { Stored, Duplicate, Conflict }

/// <summary>
/// Rows in the order of their arrival, until the hourly move. Refuses what is already there: from a set of keys in memory for what
/// has not been moved, from the keyed table for what has. Used inside write transactions only.
/// </summary>
sealed class ArrivalBook
{
    readonly Dictionary<(int Series, long At), double> unmoved = [];
    readonly Dictionary<int, long> newestAt = [];
    readonly HashSet<(int Series, long Hour)> dirty = [];
    readonly Dictionary<int, long[]> counterTails = [];
    long nextSequence;

    public ArrivalBook(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT series, at, value FROM arrival";
        using (var rows = command.ExecuteReader())
            while (rows.Read()) unmoved[(rows.GetInt32(0), rows.GetInt64(1))] = rows.GetDouble(2);
        command.CommandText = "SELECT series, max(at) FROM reading GROUP BY series UNION ALL SELECT series, max(at) FROM arrival GROUP BY series";
        using (var rows = command.ExecuteReader())
            while (rows.Read()) newestAt[rows.GetInt32(0)] = Math.Max(rows.GetInt64(1), newestAt.GetValueOrDefault(rows.GetInt32(0), long.MinValue));
        command.CommandText = "SELECT series, hour FROM dirty";
        using (var rows = command.ExecuteReader())
            while (rows.Read()) dirty.Add((rows.GetInt32(0), rows.GetInt64(1)));
        // Moved rows leave gaps at the end: the next number is kept, so that a position once passed is never used again.
        command.CommandText = "SELECT max(ifnull((SELECT max(seq) FROM arrival), 0), ifnull((SELECT CAST(value AS INTEGER) FROM fact WHERE name = 'moved-to'), 0)) + 1";
        nextSequence = (long)command.ExecuteScalar()!;
    }

    /// <summary>Newest time stored for a series, in microseconds; null where there is none.</summary>
    public long? NewestAt(int series) => newestAt.TryGetValue(series, out var at) ? at : null;

    public ArrivalResult Add(Series series, Instant at, double value, ReadingMarks marks, Instant arrived, bool isCounter, WriteScope scope)
    {
        var micros = at.ToMicroseconds();
        var key = (series.Id, micros);
        var newest = NewestAt(series.Id);
        if (unmoved.TryGetValue(key, out var kept)) return Same(series, micros, kept, value, scope);
        if (newest is { } last && micros <= last && Moved(series.Id, micros, scope) is { } moved) return Same(series, micros, moved, value, scope);

        scope.Execute("INSERT INTO arrival VALUES ($seq, $series, $at, $value, $marks, $arrived)",
            ("$seq", nextSequence), ("$series", series.Id), ("$at", micros), ("$value", value), ("$marks", (int)marks), ("$arrived", arrived.ToMicroseconds()));
        nextSequence++;
        unmoved[key] = value;
        scope.OnRollback(() => { unmoved.Remove(key); nextSequence--; });
        MarkDirty(series.Id, micros, newest, isCounter, scope);
        if (newest is null || micros > newest)
        {
            newestAt[series.Id] = micros;
            scope.OnRollback(() => { if (newest is { } before) newestAt[series.Id] = before; else newestAt.Remove(series.Id); });
        }
        return ArrivalResult.Stored;
    }

    static double? Moved(int series, long micros, WriteScope scope)
    {
        using var command = scope.Command("SELECT value FROM reading WHERE series = $series AND at = $at", ("$series", series), ("$at", micros));
        return command.ExecuteScalar() as double?;
    }

    static ArrivalResult Same(Series series, long micros, double kept, double offered, WriteScope scope)
    {
        if (BitConverter.DoubleToInt64Bits(kept) == BitConverter.DoubleToInt64Bits(offered))
        {
            scope.Count(Counters.Duplicate);
            return ArrivalResult.Duplicate;
        }
        scope.Count(Counters.Conflict);
        scope.Execute("INSERT INTO conflict (at, series, reading_at, kept, offered) VALUES ($at, $series, $reading, $kept, $offered)",
            ("$at", scope.Now.ToMicroseconds()), ("$series", series.Id), ("$reading", micros), ("$kept", kept), ("$offered", offered));
        scope.Execute("DELETE FROM conflict WHERE id <= (SELECT max(id) FROM conflict) - 1000");
        return ArrivalResult.Conflict;
    }

    /// <summary>
    /// A sample changes its own hour, and those that its segments to the neighbours reach: the hours between for a counter,
    /// which knows what passed in a gap; the neighbours' own hours for the rest.
    /// </summary>
    void MarkDirty(int series, long micros, long? newest, bool isCounter, WriteScope scope)
    {
        var hour = HourOf(micros);
        Mark(series, hour, scope);
        long? before = newest, after = null;
        if (newest is { } last && micros < last) (before, after) = Neighbours(series, micros, scope);
        if (isCounter) before = ThirdBefore(series, micros, newest, scope) ?? before;
        if (before is { } earlier) Span(series, HourOf(earlier), hour, isCounter, scope);
        if (after is { } later) Span(series, hour, HourOf(later), isCounter, scope);
    }

    /// <summary>Whether a step back of a counter was a glitch or a reset is only known three readings later: the hours of all three may change.</summary>
    long? ThirdBefore(int series, long micros, long? newest, WriteScope scope)
    {
        if (newest is null) return null;
        var isNewest = micros > newest;
        if (!isNewest || !counterTails.TryGetValue(series, out var tail)) tail = LastThree(series, micros, scope);
        if (isNewest)
        {
            counterTails[series] = [.. tail.Append(micros).TakeLast(3)];
            scope.OnRollback(() => counterTails.Remove(series));
        }
        return tail.Length > 0 ? tail[0] : null;
    }

    static long[] LastThree(int series, long micros, WriteScope scope)
    {
        using var command = scope.Command("""
            SELECT at FROM (SELECT * FROM (SELECT at FROM reading WHERE series = $series AND at < $at ORDER BY at DESC LIMIT 3)
            UNION ALL SELECT * FROM (SELECT at FROM arrival WHERE series = $series AND at < $at ORDER BY at DESC LIMIT 3)) ORDER BY at DESC LIMIT 3
            """, ("$series", series), ("$at", micros));
        using var rows = command.ExecuteReader();
        var times = new List<long>();
        while (rows.Read()) times.Insert(0, rows.GetInt64(0));
        return [.. times];
    }

    void Span(int series, long from, long to, bool isCounter, WriteScope scope)
    {
        Mark(series, from, scope);
        Mark(series, to, scope);
        if (!isCounter) return;
        for (var hour = from + HourMicros; hour < to; hour += HourMicros) Mark(series, hour, scope);
    }

    static (long? Before, long? After) Neighbours(int series, long micros, WriteScope scope)
    {
        using var command = scope.Command("""
            SELECT max(at), 0 FROM (SELECT max(at) AS at FROM reading WHERE series = $series AND at < $at UNION ALL SELECT max(at) FROM arrival WHERE series = $series AND at < $at)
            UNION ALL
            SELECT min(at), 1 FROM (SELECT min(at) AS at FROM reading WHERE series = $series AND at > $at UNION ALL SELECT min(at) FROM arrival WHERE series = $series AND at > $at)
            """, ("$series", series), ("$at", micros));
        using var rows = command.ExecuteReader();
        rows.Read();
        long? before = rows.IsDBNull(0) ? null : rows.GetInt64(0);
        rows.Read();
        return (before, rows.IsDBNull(0) ? null : rows.GetInt64(0));
    }

    void Mark(int series, long hour, WriteScope scope)
    {
        if (!dirty.Add((series, hour))) return;
        scope.OnRollback(() => dirty.Remove((series, hour)));
        scope.Execute("INSERT OR IGNORE INTO dirty VALUES ($series, $hour)", ("$series", series), ("$hour", hour));
    }

    /// <summary>Hours whose row is not true, oldest first; the caller recomputes them and then calls <see cref="Clean"/>.</summary>
    public IReadOnlyList<(int Series, long Hour)> DirtyBefore(long micros) =>
        [.. dirty.Where(d => d.Hour + HourMicros <= micros).OrderBy(d => d.Hour).ThenBy(d => d.Series)];

    public void Clean(int series, long hour, WriteScope scope)
    {
        if (!dirty.Remove((series, hour))) return;
        scope.OnRollback(() => dirty.Add((series, hour)));
        scope.Execute("DELETE FROM dirty WHERE series = $series AND hour = $hour", ("$series", series), ("$hour", hour));
    }

    /// <summary>Moves the oldest arrivals that came before a moment into the keyed table, at most so many at once.</summary>
    /// <returns>Rows moved; 0 when there is nothing left to move.</returns>
    public int MoveBefore(Instant arrived, int most, WriteScope scope)
    {
        using var pick = scope.Command("SELECT seq, series, at, value, marks FROM arrival WHERE arrived < $arrived ORDER BY seq LIMIT $most",
            ("$arrived", arrived.ToMicroseconds()), ("$most", most));
        var moved = new List<(long Sequence, int Series, long At, double Value, int Marks)>();
        using (var rows = pick.ExecuteReader())
            while (rows.Read()) moved.Add((rows.GetInt64(0), rows.GetInt32(1), rows.GetInt64(2), rows.GetDouble(3), rows.GetInt32(4)));
        if (moved.Count == 0) return 0;
        foreach (var row in moved)
        {
            scope.Execute("INSERT OR IGNORE INTO reading VALUES ($series, $at, $value, $marks)", ("$series", row.Series), ("$at", row.At), ("$value", row.Value), ("$marks", row.Marks));
            scope.Execute("DELETE FROM arrival WHERE seq = $seq", ("$seq", row.Sequence));
            unmoved.Remove((row.Series, row.At));
        }
        scope.OnRollback(() => { foreach (var row in moved) unmoved[(row.Series, row.At)] = row.Value; });
        scope.Execute("INSERT OR REPLACE INTO fact VALUES ('moved-to', $seq)", ("$seq", moved[^1].Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        return moved.Count;
    }

    public const long HourMicros = 3_600_000_000;

    public static long HourOf(long micros) => micros - (micros % HourMicros + HourMicros) % HourMicros;
}
