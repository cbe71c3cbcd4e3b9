using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.History.Import;

/// <summary>
/// Imports a table of log entries, checked as a whole before the first is written. The logbook is append-only: an entry whose id is there stays as it is.
/// A row without an id gets one made of what it says, so the same table imported twice is logged once.
/// </summary>
sealed class LogbookImport(StudioPlan plan, LogbookBook logbook, IStoreWriter writer, IStoreReader store, TimeProvider clock)
{
    const int EntriesAtOnce = 500;

    public const string Kind = "logbook";

    /// <exception cref="CsvFileException">The file is no such table, or the choice does not fit.</exception>
    public async Task<ImportReport> Run(Func<Stream> open, string name, ImportChoices choices, CancellationToken stop)
    {
        if (choices.Replace) throw new CsvFileException("the logbook is never rewritten: leave --replace out, and import a row with entry 'correction' whose 'of' names the entry");
        var tally = new ImportTally();
        using (var rehearsal = new LogbookRehearsal(plan, store))
        using (var rows = new CsvRows(open(), name))
        {
            Check(rows, rehearsal, tally, stop);
            if (tally.ProblemCount > 0 || choices.IsDryRun) return tally.Report(Kind, choices.IsDryRun);
        }
        var written = new ImportTally();
        using var again = new CsvRows(open(), name);
        foreach (var piece in Entries(again).Chunk(EntriesAtOnce)) await Put(piece, written, stop);
        return written.Report(Kind, false);
    }

    void Check(CsvRows rows, LogbookRehearsal rehearsal, ImportTally tally, CancellationToken stop)
    {
        foreach (var column in new[] { "appliance", "entry", "time" })
            if (!rows.Has(column)) throw new CsvFileException($"{rows.Name}, line 1: the column '{column}' is missing; the columns are {string.Join(',', LogbookCells.Columns)}");
        if (rows.Columns.Except(LogbookCells.Columns, StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } strange)
            throw new CsvFileException($"{rows.Name}, line 1: the column '{Shown.Short(strange)}' is unknown; the columns are {string.Join(',', LogbookCells.Columns)}");
        var now = clock.GetUtcNow().ToInstant();
        foreach (var (line, entry, problem) in Entries(rows))
        {
            stop.ThrowIfCancellationRequested();
            tally.Rows++;
            if ((problem ?? rehearsal.Problem(entry!, now)) is { } wrong) tally.Problem(line, wrong);
            else
            {
                tally.Saw(entry!.At!.Value);
                Count(line, entry, rehearsal.Before(entry.Id!), tally);
            }
        }
    }

    async Task Put((long Line, WireLogEntry? Entry, string? Problem)[] piece, ImportTally tally, CancellationToken stop)
    {
        var now = clock.GetUtcNow().ToInstant();
        var results = await writer.Write(scope => piece.Select(p => logbook.Add(p.Entry!, now, scope)).ToList(), stop);
        foreach (var ((line, entry, _), result) in piece.Zip(results))
        {
            tally.Rows++;
            tally.Saw(entry!.At!.Value);
            if (result.Refusal is { } refusal) tally.Conflict(line, refusal);
            else Count(line, entry, result.IsNew ? null : result.Entry, tally);
        }
    }

    static void Count(long line, WireLogEntry entry, LogEntry? before, ImportTally tally)
    {
        if (before is null) tally.Added++;
        else if (before.Appliance == entry.Appliance && before.Entry == entry.Entry && before.At == entry.At && before.Who == entry.Who
            && System.Text.Json.Nodes.JsonNode.DeepEquals(before.Fields, entry.Fields)) tally.Known++;
        else tally.Conflict(line, $"'{entry.Id}' is in the logbook and says something else, which stays");
    }

    /// <summary>Rows as entries with a time and an id, or what is wrong with them.</summary>
    IEnumerable<(long Line, WireLogEntry? Entry, string? Problem)> Entries(CsvRows rows)
    {
        var alike = new Dictionary<string, int>(StringComparer.Ordinal);
        while (rows.Read())
        {
            var (entry, problem) = Entry(rows, alike);
            yield return (rows.Line, entry, problem);
        }
    }

    (WireLogEntry? Entry, string? Problem) Entry(CsvRows row, Dictionary<string, int> alike)
    {
        if (row.Problem is { } broken) return (null, broken);
        var (at, noTime) = StudioTime.Parse(row["time"], plan.Zone);
        if (noTime is not null) return (null, noTime);
        var name = row["appliance"] is { } full && full.StartsWith(plan.Site + "/", StringComparison.Ordinal) ? full[(plan.Site.Length + 1)..] : row["appliance"];
        if (name is null || plan.Appliance(name) is null) return (null, $"there is no appliance '{Shown.Short(name ?? "")}': name one of {string.Join(", ", plan.Appliances.Select(a => a.Id))}");
        var (cells, problem) = LogbookCells.Read(row);
        if (problem is not null) return (null, problem);
        cells["time"] = InstantPattern.ExtendedIso.Format(at);
        var (entry, wrong) = LogEntryForm.Check(JsonSerializer.SerializeToElement(cells), name);
        return wrong is null ? (entry! with { Id = entry.Id ?? MadeOf(name, cells, alike) }, null) : (null, wrong);
    }

    /// <summary>Two rows that say the same are two gathers: the second is the second of its kind.</summary>
    static string MadeOf(string appliance, System.Text.Json.Nodes.JsonObject cells, Dictionary<string, int> alike)
    {
        var said = $"{appliance} {string.Join(' ', cells.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => $"{c.Key}={c.Value?.ToJsonString()}"))}";
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(said)))[..24];
        alike[hash] = alike.GetValueOrDefault(hash) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"table-{hash}-{alike[hash]}");
    }
}
