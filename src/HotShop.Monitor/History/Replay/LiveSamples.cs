using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.History.Replay;

/// <summary>A stored reading that was live when it came, with the channel's place in the engine.</summary>
readonly record struct LiveSample(long At, int Channel, double Value, bool IsPlausible);

/// <summary>The live readings of many series merged in order of time; of one moment in the order of the channels.</summary>
sealed class LiveSamples : IDisposable
{
    const ReadingMarks NotLive = ReadingMarks.Late | ReadingMarks.Retained | ReadingMarks.Imported;

    readonly List<IEnumerator<(long At, double Value, ReadingMarks Marks)>> streams = [];
    readonly PriorityQueue<(int Stream, LiveSample Sample), (long At, int Channel)> next = new();
    readonly List<(int Channel, bool IsVoltage)> of = [];

    /// <param name="series">With the place of their channel.</param>
    public LiveSamples(SqliteConnection connection, IEnumerable<(Series Series, int Channel)> series, long from, long to)
    {
        foreach (var (one, channel) in series)
        {
            of.Add((channel, one.Unit == Quantities.Millivolt));
            streams.Add(SampleRows.Every(connection, one.Id, from, to).GetEnumerator());
            Advance(streams.Count - 1);
        }
    }

    public bool TryNext(out LiveSample sample)
    {
        sample = default;
        if (!next.TryDequeue(out var first, out _)) return false;
        sample = first.Sample;
        Advance(first.Stream);
        return true;
    }

    void Advance(int stream)
    {
        var (channel, isVoltage) = of[stream];
        while (streams[stream].MoveNext())
        {
            var (at, value, marks) = streams[stream].Current;
            if ((marks & NotLive) != 0) continue;
            var isPlausible = (marks & (ReadingMarks.Implausible | ReadingMarks.OpenCircuit)) == 0;
            // A voltage that became a temperature speaks through that; one that no couple gives shows only that the device lives.
            if (isVoltage && isPlausible) continue;
            var sample = new LiveSample(at, channel, isVoltage ? double.NaN : value, isPlausible);
            next.Enqueue((stream, sample), (at, channel));
            return;
        }
    }

    public void Dispose()
    {
        foreach (var stream in streams) stream.Dispose();
    }
}
