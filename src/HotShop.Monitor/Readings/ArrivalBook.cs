using System.Globalization;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>What became of a reading offered to the store.</summary>
public enum ArrivalResult { Stored, Duplicate, Conflict }

/// <summary>
/// Rows in the order of their arrival, until the hourly move. Refuses what is already there: from a set of keys in memory for what
/// has not been moved, from the keyed table for what has. Used inside write transactions only.
/// </summary>
sealed partial class ArrivalBook
{
    /// <summary>Readings on each side that a counter's course depends on: that many settle a glitch.</summary>
    const int CounterNeighbours = 3;

    readonly Dictionary<int, Unmoved> unmoved = [];
    readonly Dictionary<int, long> newestMoved = [];
    long nextSequence, movedTo;

    public ArrivalBook(IStoreReader store)
    {
        using var connection = store.Open();
        Dirty = new DirtyHours(connection);
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT series, at, value, marks FROM arrival";
        using (var rows = command.ExecuteReader())
            while (rows.Read()) Of(rows.GetInt32(0)).Add(rows.GetInt64(1), rows.GetDouble(2), SampleRows.Counts((ReadingMarks)rows.GetInt32(3)));
        // One look per series at the end of its key: grouping the table would read all of it.
        command.CommandText = "SELECT id, (SELECT max(at) FROM reading WHERE series = id) FROM series";
        using (var rows = command.ExecuteReader())
            while (rows.Read()) if (!rows.IsDBNull(1)) newestMoved[rows.GetInt32(0)] = rows.GetInt64(1);
        // Moved rows leave gaps at the end: the highest number is kept, so that a position once passed is never used again.
        command.CommandText = "SELECT ifnull((SELECT CAST(value AS INTEGER) FROM fact WHERE name = 'moved-to'), 0)";
        movedTo = (long)command.ExecuteScalar()!;
        command.CommandText = "SELECT ifnull(max(seq), 0) FROM arrival";
        nextSequence = Math.Max(movedTo, (long)command.ExecuteScalar()!) + 1;
    }

    /// <summary>Hours to be computed again.</summary>
    public DirtyHours Dirty { get; }

    /// <summary>Newest time stored for a series, in microseconds; null where there is none.</summary>
    public long? NewestAt(int series)
    {
        long? waiting = unmoved.GetValueOrDefault(series)?.Newest;
        return newestMoved.TryGetValue(series, out var moved) ? Math.Max(moved, waiting ?? moved) : waiting;
    }

    /// <summary>Whether there is a reading of exactly this time.</summary>
    public bool Has(int series, Instant at, WriteScope scope) => Kept(series, at.ToMicroseconds(), scope) is not null;

    public ArrivalResult Add(Series series, ChannelPlan channel, Instant at, double value, ReadingMarks marks, Instant arrived, WriteScope scope)
    {
        var micros = at.ToMicroseconds();
        if (Kept(series.Id, micros, scope) is { } kept) return Same(series, micros, kept, value, scope);
        scope.Execute("INSERT INTO arrival VALUES ($seq, $series, $at, $value, $marks, $arrived)",
            ("$seq", nextSequence), ("$series", series.Id), ("$at", micros), ("$value", value), ("$marks", (int)marks), ("$arrived", arrived.ToMicroseconds()));
        nextSequence++;
        var (rows, counts) = (Of(series.Id), SampleRows.Counts(marks));
        rows.Add(micros, value, counts);
        scope.OnRollback(() => { rows.Remove(micros, out _); nextSequence--; });
        // What no sum takes makes no hour untrue: neither a raw voltage nor an implausible value.
        if (counts && series.Unit == channel.Quantity.CanonicalUnit()) MarkDirty(series.Id, channel, micros, scope);
        return ArrivalResult.Stored;
    }

    double? Kept(int series, long micros, WriteScope scope)
    {
        if (unmoved.GetValueOrDefault(series)?.ValueAt(micros) is { } waiting) return waiting;
        if (!newestMoved.TryGetValue(series, out var newest) || micros > newest) return null;
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
    /// Marks every hour whose row a new sample changes. A counter: from its third neighbour before to its third after, because those settle
    /// what is a glitch. A line: the hours its segments to the neighbours cross. A held value: the hours it holds through, those to come included.
    /// </summary>
    void MarkDirty(int series, ChannelPlan channel, long micros, WriteScope scope)
    {
        var reach = channel.LongestGap.ToTimeSpan().Ticks / 10;
        if (channel.Quantity.IsCumulative())
            Dirty.Mark(series, Before(series, micros, CounterNeighbours, scope) ?? micros, After(series, micros, CounterNeighbours, scope) ?? micros, scope);
        else if (channel.Quantity.CourseOf() == Course.Held)
            Dirty.Mark(series, micros, Math.Max(micros, Math.Min(After(series, micros, 1, scope) ?? long.MaxValue, micros + reach) - 1), scope);
        else
        {
            var before = Before(series, micros, 1, scope) is { } earlier && micros - earlier <= reach ? earlier : micros;
            var after = After(series, micros, 1, scope) is { } later && later - micros <= reach ? later : micros;
            // A segment that ends with the hour takes no time of the next.
            Dirty.Mark(series, before, Math.Max(micros, after - 1), scope);
        }
    }

    /// <summary>Time of the last of so many neighbours before a moment, or of the last there is.</summary>
    long? Before(int series, long micros, int most, WriteScope scope)
    {
        var near = Of(series).Before(micros).Take(most).ToList();
        var isComplete = near.Count == most && (!newestMoved.TryGetValue(series, out var newest) || near[^1] > newest);
        if (!isComplete && newestMoved.ContainsKey(series))
            near.AddRange(Moved($"SELECT at FROM reading WHERE series = $series AND at < $at AND {SampleRows.ThatCount} ORDER BY at DESC LIMIT $most", series, micros, most, scope));
        return near.Count == 0 ? null : near.OrderDescending().Take(most).Last();
    }

    long? After(int series, long micros, int most, WriteScope scope)
    {
        if (NewestAt(series) is not { } last || last <= micros) return null;
        var near = Of(series).After(micros).Take(most).ToList();
        if (newestMoved.TryGetValue(series, out var newest) && newest > micros)
            near.AddRange(Moved($"SELECT at FROM reading WHERE series = $series AND at > $at AND {SampleRows.ThatCount} ORDER BY at LIMIT $most", series, micros, most, scope));
        return near.Count == 0 ? null : near.Order().Take(most).Last();
    }

    static List<long> Moved(string sql, int series, long micros, int most, WriteScope scope)
    {
        using var command = scope.Command(sql, ("$series", series), ("$at", micros), ("$most", most));
        using var rows = command.ExecuteReader();
        var times = new List<long>();
        while (rows.Read()) times.Add(rows.GetInt64(0));
        return times;
    }

    Unmoved Of(int series)
    {
        if (!unmoved.TryGetValue(series, out var rows)) unmoved[series] = rows = new Unmoved();
        return rows;
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
        foreach (var row in moved) Move(row, scope);
        if (moved.Count == 0 || moved[^1].Sequence <= movedTo) return moved.Count;
        var before = movedTo;
        movedTo = moved[^1].Sequence;
        scope.OnRollback(() => movedTo = before);
        scope.Execute("INSERT OR REPLACE INTO fact VALUES ('moved-to', $seq)", ("$seq", movedTo.ToString(CultureInfo.InvariantCulture)));
        return moved.Count;
    }

    void Move((long Sequence, int Series, long At, double Value, int Marks) row, WriteScope scope)
    {
        scope.Execute("INSERT OR IGNORE INTO reading VALUES ($series, $at, $value, $marks)", ("$series", row.Series), ("$at", row.At), ("$value", row.Value), ("$marks", row.Marks));
        scope.Execute("DELETE FROM arrival WHERE seq = $seq", ("$seq", row.Sequence));
        var rows = Of(row.Series);
        long? newest = newestMoved.TryGetValue(row.Series, out var known) ? known : null;
        newestMoved[row.Series] = Math.Max(row.At, newest ?? row.At);
        rows.Remove(row.At, out var kept);
        scope.OnRollback(() =>
        {
            rows.Add(row.At, kept.Value, kept.Counts);
            if (newest is { } before) newestMoved[row.Series] = before;
            else newestMoved.Remove(row.Series);
        });
    }
}
