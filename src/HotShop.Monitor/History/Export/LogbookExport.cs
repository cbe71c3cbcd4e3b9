using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.History.Export;

/// <summary>Writes the logbook as a table that import takes back, corrections included, in the order in which the entries were logged: a correction after what it corrects.</summary>
sealed class LogbookExport(IStoreReader store)
{
    /// <returns>Rows written.</returns>
    public long Write(Stream file, bool isCompressed, string? appliance, Instant from, Instant to, CancellationToken stop)
    {
        long written = 0;
        using var lines = new CsvLines(file, isCompressed, LogbookCells.Columns);
        using var connection = store.Open();
        foreach (var entry in LogRows.AsLogged(connection, appliance, from, to))
        {
            stop.ThrowIfCancellationRequested();
            lines.Text(entry.Id).Raw(entry.Appliance).Raw(entry.Entry).Raw(InstantPattern.ExtendedIso.Format(entry.At)).Text(entry.Who);
            LogbookCells.Write(entry.Fields, lines);
            lines.End();
            written++;
        }
        return written;
    }
}
