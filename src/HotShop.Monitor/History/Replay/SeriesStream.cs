using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>
/// Samples of one series hour by hour, each with the three neighbours on both sides that its sums want, read once from beginning to end:
/// a year passes through the memory of an hour.
/// </summary>
sealed class SeriesStream : IDisposable
{
    const int Neighbours = 3;

    readonly IEnumerator<(long At, double Value, ReadingMarks Marks)> rows;
    readonly List<Sample> held = [];
    bool isOver;

    public SeriesStream(SqliteConnection connection, int series, Instant from, Instant to)
    {
        // Neighbours before the beginning and after the end are the only ones that are looked for.
        var before = SampleRows.WithNeighbours(connection, series, from, from).Where(s => s.At < from).ToList();
        held.AddRange(before);
        rows = SampleRows.Every(connection, series, from.ToMicroseconds(), long.MaxValue).GetEnumerator();
    }

    /// <param name="hour">Later than that of the last call.</param>
    /// <param name="inside">Samples within the hour.</param>
    public List<Sample> Hour(Instant hour, Instant end, out int inside)
    {
        Pull(end);
        int first = FirstAt(hour), last = FirstAt(end);
        inside = last - first;
        var start = Math.Max(0, first - Neighbours);
        var slice = held.GetRange(start, Math.Min(held.Count, last + Neighbours) - start);
        held.RemoveRange(0, Math.Max(0, last - Neighbours));
        return slice;
    }

    /// <summary>Reads on until three samples after the end are there, or there are no more.</summary>
    void Pull(Instant end)
    {
        while (!isOver && (held.Count < Neighbours || held[^Neighbours].At < end))
        {
            if (!rows.MoveNext())
            {
                isOver = true;
                return;
            }
            var (at, value, marks) = rows.Current;
            if (SampleRows.Counts(marks)) held.Add(new Sample(Columns.FromMicroseconds(at), value));
        }
    }

    int FirstAt(Instant at)
    {
        int low = 0, high = held.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (held[middle].At < at) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    public void Dispose() => rows.Dispose();
}
