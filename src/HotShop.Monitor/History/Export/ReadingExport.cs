using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using Columns = HotShop.Monitor.Store.Columns;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.History.Export;

/// <summary>Writes readings as a table that import takes back: every value to its last bit, implausible ones and raw voltages too.</summary>
sealed class ReadingExport(IStoreReader store)
{
    /// <param name="channel">As APPLIANCE/CHANNEL; null: all.</param>
    /// <returns>Rows written.</returns>
    public long Write(Stream file, bool isCompressed, string? channel, Instant from, Instant to, CancellationToken stop)
    {
        long written = 0;
        using var lines = new CsvLines(file, isCompressed, ReadingLines.Columns);
        using var connection = store.Open();
        foreach (var one in new SeriesBook(store).All.Where(s => channel is null || s.Channel == channel).OrderBy(s => s.Channel, StringComparer.Ordinal).ThenBy(s => s.Unit, StringComparer.Ordinal))
            foreach (var (at, value, _) in SampleRows.Every(connection, one.Id, from.ToMicroseconds(), to.ToMicroseconds()))
            {
                stop.ThrowIfCancellationRequested();
                lines.Raw(one.Channel).Raw(InstantPattern.ExtendedIso.Format(Columns.FromMicroseconds(at))).Number(value).Raw(one.Unit == "1" ? "" : one.Unit).End();
                written++;
            }
        return written;
    }
}
