using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>The last minutes of every series in memory, for closing minutes without asking the store. Touched by the writer alone.</summary>
sealed class RecentSamples
{
    static readonly Duration Kept = Duration.FromMinutes(4);
    readonly Dictionary<int, List<Sample>> bySeries = [];

    /// <summary>Begins with the last minutes that are stored: a restart in the middle of a minute leaves no hole in it.</summary>
    public RecentSamples(IStoreReader store, SeriesBook series, ArrivalBook arrivals, ChannelDirectory channels)
    {
        using var connection = store.Open();
        foreach (var one in series.All)
        {
            if (channels.Find(one.Channel) is not { } channel || one.Unit != channel.Quantity.CanonicalUnit() || arrivals.NewestAt(one.Id) is not { } micros) continue;
            var newest = Columns.FromMicroseconds(micros);
            bySeries[one.Id] = SampleRows.WithNeighbours(connection, one.Id, newest - Kept, newest + Duration.Epsilon);
        }
    }

    /// <summary>Keeps time order: a late sample goes to its place. Older than what is kept: ignored here, the hourly move sees it.</summary>
    public void Add(int series, Sample sample)
    {
        if (!bySeries.TryGetValue(series, out var samples)) bySeries[series] = samples = [];
        if (samples.Count > 0 && sample.At < samples[^1].At - Kept) return;
        var at = samples.Count;
        while (at > 0 && samples[at - 1].At > sample.At) at--;
        samples.Insert(at, sample);
    }

    public IReadOnlyList<Sample> Of(int series) => bySeries.TryGetValue(series, out var samples) ? samples : [];

    /// <summary>Forgets what lies before a moment, but for the one sample just before it.</summary>
    public void Trim(Instant before)
    {
        foreach (var samples in bySeries.Values)
        {
            var old = samples.FindLastIndex(s => s.At < before);
            if (old > 0) samples.RemoveRange(0, old);
        }
    }
}
