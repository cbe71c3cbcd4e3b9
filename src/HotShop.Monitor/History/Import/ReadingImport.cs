using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.History.Import;

/// <summary>
/// Imports a table of readings. The whole file is checked first; with one bad row nothing is written. Then it is written in small pieces between the live ones,
/// so readings and alarms never wait for it. A power cut between two pieces leaves the rows before it: the same file again completes it, as what is there is known.
/// Imported readings are late: they never ring and are never the present.
/// </summary>
sealed class ReadingImport(StudioPlan plan, PlanHistory plans, IStoreWriter writer, ArrivalBook arrivals, SeriesBook series, LatestReadings latest, HourlyMove move, TimeProvider clock)
{
    /// <summary>Rows of one piece of work: some hundredths of a second.</summary>
    const int RowsAtOnce = 2000;

    /// <summary>Marked hours that may wait before they are added up, so that years of history do not pile up in memory.</summary>
    const int MostMarks = 20_000;

    public const string Kind = "readings";

    /// <param name="open">Opens the file at its beginning; called twice.</param>
    /// <param name="name">What people call the file.</param>
    /// <exception cref="CsvFileException">The file is no such table.</exception>
    public async Task<ImportReport> Run(Func<Stream> open, string name, ImportChoices choices, CancellationToken stop)
    {
        var lines = new ReadingLines(plan, plans, clock.GetUtcNow().ToInstant());
        var check = new ImportTally();
        using (var rows = new CsvRows(open(), name)) Check(rows, lines, check, stop);
        if (check.ProblemCount > 0) return check.Report(Kind, choices.IsDryRun);
        using var again = new CsvRows(open(), name);
        return (await Write(again, lines, choices, stop)).Report(Kind, choices.IsDryRun);
    }

    static void Check(CsvRows rows, ReadingLines lines, ImportTally tally, CancellationToken stop)
    {
        ReadingLines.CheckHeader(rows);
        while (rows.Read())
        {
            stop.ThrowIfCancellationRequested();
            tally.Rows++;
            if (lines.Of(rows).Problem is { } problem) tally.Problem(rows.Line, problem);
        }
    }

    async Task<ImportTally> Write(CsvRows rows, ReadingLines lines, ImportChoices choices, CancellationToken stop)
    {
        var tally = new ImportTally();
        var piece = new List<ReadingLine>(RowsAtOnce);
        while (rows.Read())
        {
            tally.Rows++;
            // The file was in order a moment ago; a row that no longer is was changed under the import.
            if (lines.Of(rows) is not { Problem: null, Line: var line }) throw new CsvFileException($"{rows.Name}, line {rows.Line}: the file was changed while it was read; run the import again");
            tally.Saw(line.At);
            piece.Add(line);
            if (piece.Count < RowsAtOnce) continue;
            await Put(piece, choices, tally, stop);
            piece.Clear();
        }
        if (piece.Count > 0) await Put(piece, choices, tally, stop);
        return tally;
    }

    async Task Put(List<ReadingLine> piece, ImportChoices choices, ImportTally tally, CancellationToken stop)
    {
        var now = clock.GetUtcNow().ToInstant();
        var became = await writer.Write(scope =>
        {
            var results = new List<(ReadingLine Line, ImportedResult Result, double Kept)>(piece.Count);
            foreach (var one in piece.GroupBy(l => (l.Channel.Id, l.Unit))) Put([.. one.OrderBy(l => l.Row.AtMicroseconds)], choices, now, results, scope);
            return results;
        }, stop);
        foreach (var (line, result, kept) in became) Count(line, result, kept, tally);
        if (!choices.IsDryRun && arrivals.DirtyCount > MostMarks) await move.Run(now, stop);
    }

    void Put(List<ReadingLine> lines, ImportChoices choices, Instant now, List<(ReadingLine, ImportedResult, double)> results, WriteScope scope)
    {
        var channel = lines[0].Channel;
        // The bound of the nightly upkeep: whole hours, and one more.
        var rawBefore = DirtyHours.HourOf((now - Duration.FromDays(plan.Configuration.Store.RawDays)).ToMicroseconds()) - DirtyHours.Micros;
        var i = 0;
        ReadingLine? newest = null;
        if (choices.IsDryRun)
        {
            var known = series.Find(channel.Id, lines[0].Unit);
            foreach (var line in lines)
            {
                var (result, kept) = known is null ? (ImportedResult.Added, 0) : arrivals.Look(known.Id, line.Row, choices.Replace, scope);
                results.Add((line, result, kept));
            }
            return;
        }
        var one = series.FindOrMake(channel.Id, lines[0].Unit, scope);
        arrivals.Import(one, channel, [.. lines.Select(l => l.Row)], rawBefore, choices.Replace, (_, result, kept) =>
        {
            if (result is ImportedResult.Added or ImportedResult.Replaced) newest = lines[i];
            results.Add((lines[i++], result, kept));
        }, scope);
        if (newest is not { } last) return;
        // The newest of a channel shows on the pages as what it is: late.
        var reading = new StoredReading(channel, last.Unit, last.At, last.Row.Value, last.Row.Marks, IsLive: false, now);
        scope.OnCommit(() => latest.Adopt([reading]));
    }

    static void Count(ReadingLine line, ImportedResult result, double kept, ImportTally tally)
    {
        switch (result)
        {
            case ImportedResult.Added: tally.Added++; break;
            case ImportedResult.Known: tally.Known++; break;
            case ImportedResult.Replaced: tally.Replaced++; break;
            case ImportedResult.Closed: tally.Closed++; break;
            default:
                tally.Conflict(line.Row.Tag, string.Create(CultureInfo.InvariantCulture, $"{line.Channel.Id} at {line.At} is stored as {kept} {line.Unit}, the file says {line.Row.Value}"));
                break;
        }
    }
}
