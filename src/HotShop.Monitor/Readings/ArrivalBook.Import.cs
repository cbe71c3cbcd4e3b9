using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;

namespace HotShop.Monitor.Readings;

/// <summary>
/// Rows of a file go straight into the keyed table, past the order of arrival: they are no news. Their hours are marked as those of late readings are.
/// Where an hour is older than raw readings are kept and already has its sum, the sum is all that is left of what was measured: it stays, unless it is to be replaced.
/// </summary>
sealed partial class ArrivalBook
{
    /// <summary>Hours that are to be computed again.</summary>
    public int DirtyCount => Dirty.Count;

    /// <param name="rows">Of one series, in order of time.</param>
    /// <param name="rawBefore">Readings before this moment are let go by the nightly upkeep, microseconds.</param>
    /// <param name="became">Told of each row in turn, with the value that is stored where it is another.</param>
    public void Import(Series series, ChannelPlan channel, IReadOnlyList<ImportedRow> rows, long rawBefore, bool replace, Action<ImportedRow, ImportedResult, double> became, WriteScope scope)
    {
        var waiting = Of(series.Id);
        var changed = new List<long>(rows.Count);
        var closed = new Dictionary<long, bool>();
        foreach (var row in rows)
        {
            if (row.AtMicroseconds < rawBefore && IsClosed(series.Id, DirtyHours.HourOf(row.AtMicroseconds), replace, closed, scope))
            {
                became(row, ImportedResult.Closed, 0);
                continue;
            }
            var kept = waiting.ValueAt(row.AtMicroseconds);
            if (kept is null && Insert(series.Id, row, scope))
            {
                if (SampleRows.Counts(row.Marks)) changed.Add(row.AtMicroseconds);
                became(row, ImportedResult.Added, row.Value);
                continue;
            }
            kept ??= StoredAt(series.Id, row.AtMicroseconds, scope);
            if (BitConverter.DoubleToInt64Bits(kept.Value) == BitConverter.DoubleToInt64Bits(row.Value)) became(row, ImportedResult.Known, kept.Value);
            else if (!replace) became(row, ImportedResult.Conflict, kept.Value);
            else
            {
                Replace(series.Id, waiting, row, scope);
                changed.Add(row.AtMicroseconds);
                became(row, ImportedResult.Replaced, kept.Value);
            }
        }
        if (changed.Count == 0) return;
        Reached(series.Id, changed[^1], scope);
        if (series.Unit == channel.Quantity.CanonicalUnit()) MarkAll(series.Id, channel, changed, scope);
    }

    /// <summary>What an import would meet; nothing is written.</summary>
    public (ImportedResult Result, double Kept) Look(int series, ImportedRow row, bool replace, WriteScope scope) => Kept(series, row.AtMicroseconds, scope) switch
    {
        null => (ImportedResult.Added, row.Value),
        { } kept when BitConverter.DoubleToInt64Bits(kept) == BitConverter.DoubleToInt64Bits(row.Value) => (ImportedResult.Known, kept),
        { } kept => (replace ? ImportedResult.Replaced : ImportedResult.Conflict, kept),
    };

    static bool Insert(int series, ImportedRow row, WriteScope scope) => scope.Execute(
        "INSERT INTO reading VALUES ($series, $at, $value, $marks) ON CONFLICT (series, at) DO NOTHING",
        ("$series", series), ("$at", row.AtMicroseconds), ("$value", row.Value), ("$marks", (int)row.Marks)) == 1;

    static double StoredAt(int series, long micros, WriteScope scope)
    {
        using var command = scope.Command("SELECT value FROM reading WHERE series = $series AND at = $at", ("$series", series), ("$at", micros));
        return (double)command.ExecuteScalar()!;
    }

    static void Replace(int series, Unmoved waiting, ImportedRow row, WriteScope scope)
    {
        var table = "reading";
        if (waiting.Remove(row.AtMicroseconds, out var before))
        {
            table = "arrival";
            waiting.Add(row.AtMicroseconds, row.Value, SampleRows.Counts(row.Marks));
            scope.OnRollback(() => waiting.Add(row.AtMicroseconds, before.Value, before.Counts));
        }
        scope.Execute($"UPDATE {table} SET value = $value, marks = $marks WHERE series = $series AND at = $at",
            ("$value", row.Value), ("$marks", (int)row.Marks), ("$series", series), ("$at", row.AtMicroseconds));
    }

    /// <summary>The sum of the hour knows of more readings than are left. To replace it, it is taken away with its minutes, and what is imported stands for the hour.</summary>
    static bool IsClosed(int series, long hour, bool replace, Dictionary<long, bool> known, WriteScope scope)
    {
        if (known.TryGetValue(hour, out var isClosed)) return isClosed;
        var counted = HourRow.CountOf(series, Columns.FromMicroseconds(hour), scope);
        if (counted > 0)
        {
            using var command = scope.Command($"SELECT count(*) FROM reading WHERE series = $series AND at >= $hour AND at < $end AND {SampleRows.ThatCount}",
                ("$series", series), ("$hour", hour), ("$end", hour + DirtyHours.Micros));
            isClosed = counted > (long)command.ExecuteScalar()!;
        }
        if (isClosed && replace)
        {
            scope.Execute("DELETE FROM hour WHERE series = $series AND hour = $hour", ("$series", series), ("$hour", hour));
            scope.Execute("DELETE FROM minute WHERE series = $series AND minute >= $hour AND minute < $end", ("$series", series), ("$hour", hour), ("$end", hour + DirtyHours.Micros));
            isClosed = false;
        }
        return known[hour] = isClosed;
    }

    void Reached(int series, long newest, WriteScope scope)
    {
        long? before = newestMoved.TryGetValue(series, out var known) ? known : null;
        if (before >= newest) return;
        newestMoved[series] = newest;
        scope.OnRollback(() =>
        {
            if (before is { } value) newestMoved[series] = value;
            else newestMoved.Remove(series);
        });
    }

    /// <summary>Marks by runs of rows that lie close together: within a run every hour, and as far beyond its ends as its first and last row reach.</summary>
    void MarkAll(int series, ChannelPlan channel, List<long> times, WriteScope scope)
    {
        var reach = channel.LongestGap.ToTimeSpan().Ticks / 10;
        var from = 0;
        for (var i = 1; i <= times.Count; i++)
        {
            if (i < times.Count && (channel.Quantity.IsCumulative() || times[i] - times[i - 1] <= Math.Max(reach, DirtyHours.Micros))) continue;
            MarkDirty(series, channel, times[from], scope);
            if (i - 1 > from) MarkDirty(series, channel, times[i - 1], scope);
            Dirty.Mark(series, times[from], times[i - 1], scope);
            from = i;
        }
    }
}
