using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>
/// Moves arrivals of ended hours into the keyed table and recomputes the hours that are marked dirty, in small pieces of work
/// so that an alarm never waits behind a rollup.
/// </summary>
sealed partial class HourlyMove(ArrivalBook arrivals, SeriesBook series, PlanHistory plans, IStoreWriter writer, ILogger<HourlyMove> log)
{
    const int RowsAtOnce = 500;

    /// <summary>How long after its end an hour is taken: the neighbour that closes its last segment has come by then.</summary>
    static readonly Duration Grace = Duration.FromMinutes(2);

    /// <summary>Does all that is due. An hour that cannot be computed stays marked and stops no other.</summary>
    /// <returns>Hours recomputed.</returns>
    /// <exception cref="StoreException">The store cannot be written; the rest is done at the next call.</exception>
    public async Task<int> Run(Instant now, CancellationToken stop)
    {
        var ended = Columns.FromMicroseconds(DirtyHours.HourOf((now - Grace).ToMicroseconds()));
        while (await writer.Write(scope => arrivals.MoveBefore(ended + Grace, RowsAtOnce, scope), stop) == RowsAtOnce) { }
        var done = 0;
        foreach (var (id, hour) in await writer.Write(_ => arrivals.Dirty.EndedBy(ended.ToMicroseconds()), stop))
        {
            try
            {
                if (await writer.Write(scope => Recompute(id, hour, scope), stop)) done++;
            }
            catch (Exception failure) when (failure is not (StoreException or OperationCanceledException))
            {
                Failed(Columns.FromMicroseconds(hour), series.All.FirstOrDefault(s => s.Id == id)?.Channel, failure);
            }
        }
        return done;
    }

    bool Recompute(int id, long hour, WriteScope scope)
    {
        var one = series.All.FirstOrDefault(s => s.Id == id);
        // As it was described then: a longer interval today does not bridge a gap of last week.
        var channel = one is null ? null : plans.Channel(one.Channel, Columns.FromMicroseconds(hour));
        // A channel that nobody ever described, or that measured something else, keeps its marks: its hours wait until it is.
        if (channel is null || one!.Unit != channel.Quantity.CanonicalUnit()) return false;
        Recompute(id, Columns.FromMicroseconds(hour), channel, scope);
        arrivals.Dirty.Clean(id, hour, scope);
        return true;
    }

    static void Recompute(int id, Instant hour, ChannelPlan channel, WriteScope scope)
    {
        var end = hour + Duration.FromHours(1);
        var samples = SampleRows.WithNeighbours(scope.Connection, id, hour, end);
        var row = HourRow.Of(hour, samples, channel);
        // A row that knows of more samples than are left has outlived its raw readings: it stays.
        if (row.IsEmpty || HourRow.CountOf(id, hour, scope) > row.Count) return;
        row.Write(id, scope);
        RepairMinutes(id, hour, end, samples, channel, scope);
    }

    /// <summary>Minutes were written once at their close; only what was missing, came late or lacked its next neighbour then is written again.</summary>
    static void RepairMinutes(int id, Instant hour, Instant end, List<Sample> samples, ChannelPlan channel, WriteScope scope)
    {
        var have = MinuteRow.Read(scope.Connection, id, hour, end).ToDictionary(m => m.Minute);
        for (var minute = hour; minute < end; minute += Duration.FromMinutes(1))
            if (MinuteRow.Of(minute, samples, channel) is { } row && have.GetValueOrDefault(minute) != row) row.Write(id, scope);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The hour {Hour} of {Channel} could not be computed; it is tried again with the next move")]
    private partial void Failed(Instant hour, string? channel, Exception failure);
}
