using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>
/// Moves arrivals of ended hours into the keyed table and recomputes the hours that are marked dirty, in small pieces of work
/// so that an alarm never waits behind a rollup.
/// </summary>
sealed class HourlyMove(ArrivalBook arrivals, SeriesBook series, ChannelDirectory channels, IStoreWriter writer)
{
    const int RowsAtOnce = 500;

    /// <summary>How long after its end an hour is taken: the neighbour that closes its last segment has come by then.</summary>
    static readonly Duration Grace = Duration.FromMinutes(2);

    /// <summary>Does all that is due.</summary>
    /// <returns>Hours recomputed.</returns>
    public async Task<int> Run(Instant now, CancellationToken stop)
    {
        var ended = Columns.FromMicroseconds(ArrivalBook.HourOf((now - Grace).ToMicroseconds()));
        while (await writer.Write(scope => arrivals.MoveBefore(ended + Grace, RowsAtOnce, scope), stop) == RowsAtOnce) { }
        var due = await writer.Write(_ => arrivals.DirtyBefore(ended.ToMicroseconds()), stop);
        foreach (var (id, hour) in due) await writer.Write(scope => Recompute(id, hour, scope), stop);
        return due.Count;
    }

    void Recompute(int id, long hour, WriteScope scope)
    {
        var one = series.All.FirstOrDefault(s => s.Id == id);
        var channel = one is null ? null : channels.Find(one.Channel);
        // A channel no longer configured keeps its rows and its marks' end: nobody asks for its hours until it is back.
        if (channel is not null && one!.Unit == channel.Quantity.CanonicalUnit()) Recompute(id, Columns.FromMicroseconds(hour), channel, scope);
        arrivals.Clean(id, hour, scope);
    }

    static void Recompute(int id, Instant hour, ChannelPlan channel, WriteScope scope)
    {
        var end = hour + Duration.FromHours(1);
        var samples = SampleRows.WithNeighbours(scope.Connection, id, hour, end);
        HourRow.Of(hour, samples, channel).Write(id, scope);
        var have = Minutes(id, hour, end, scope);
        for (var minute = hour; minute < end; minute += Duration.FromMinutes(1))
        {
            var row = MinuteRow.Of(minute, samples, channel);
            // Written once at minute close; only what was missing or came late is written again.
            if (row is not null && have.GetValueOrDefault(minute) != row.Count) row.Write(id, scope);
        }
    }

    static Dictionary<Instant, int> Minutes(int id, Instant from, Instant to, WriteScope scope)
    {
        using var command = scope.Command("SELECT minute, count FROM minute WHERE series = $series AND minute >= $from AND minute < $to",
            ("$series", id), ("$from", from.ToMicroseconds()), ("$to", to.ToMicroseconds()));
        using var rows = command.ExecuteReader();
        var counts = new Dictionary<Instant, int>();
        while (rows.Read()) counts[rows.GetInstant(0)] = rows.GetInt32(1);
        return counts;
    }
}
