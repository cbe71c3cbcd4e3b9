using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Lets go of what is older than it is kept, in small pieces, and gives the room back.</summary>
sealed class Upkeep(StudioPlan plan, SeriesBook series, ArrivalBook arrivals, IStoreWriter writer)
{
    const int RowsAtOnce = 2000;

    /// <returns>Rows let go.</returns>
    public async Task<long> Run(Instant now, CancellationToken stop)
    {
        // Whole hours, and one more: what is still accepted late finds its hour and its neighbours complete.
        var rawBefore = DirtyHours.HourOf((now - Duration.FromDays(plan.Configuration.Store.RawDays)).ToMicroseconds()) - DirtyHours.Micros;
        var minutesBefore = (now - Duration.FromDays(plan.Configuration.Store.MinuteDays)).ToMicroseconds();
        long gone = 0;
        foreach (var one in series.All)
        {
            // Readings of an hour that has not been added up yet stay, with those just before it.
            var waiting = await writer.Write(_ => arrivals.Dirty.OldestOf(one.Id), stop) - DirtyHours.Micros;
            gone += await Delete("DELETE FROM reading WHERE series = $series AND at IN (SELECT at FROM reading WHERE series = $series AND at < $before ORDER BY at LIMIT $most)", one.Id, Math.Min(rawBefore, waiting ?? rawBefore), stop);
            gone += await Delete("DELETE FROM minute WHERE series = $series AND minute IN (SELECT minute FROM minute WHERE series = $series AND minute < $before ORDER BY minute LIMIT $most)", one.Id, minutesBefore, stop);
        }
        await writer.Write(scope =>
        {
            using var vacuum = scope.Command("PRAGMA incremental_vacuum(2000)");
            using var rows = vacuum.ExecuteReader();
            while (rows.Read()) { }
            return true;
        }, stop);
        return gone;
    }

    async Task<long> Delete(string sql, int id, long before, CancellationToken stop)
    {
        long all = 0;
        int some;
        do
        {
            some = await writer.Write(scope => scope.Execute(sql, ("$series", id), ("$before", before), ("$most", RowsAtOnce)), stop);
            all += some;
        }
        while (some == RowsAtOnce);
        return all;
    }
}
