using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Money;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.History.Import;

/// <summary>
/// Imports a plain list of suppliers' bills, all of it in one transaction. Bills are never rewritten: one whose id is there stays as it is, and a row that
/// corrects names it. A row without an id gets one made of what it says, so the same list imported twice is kept once.
/// </summary>
sealed class BillImport(BillBook bills, IStoreWriter writer, TimeProvider clock)
{
    public const string Kind = "bills";

    /// <exception cref="CsvFileException">The file is no such table, or the choice does not fit.</exception>
    public async Task<ImportReport> Run(Func<Stream> open, string name, ImportChoices choices, CancellationToken stop)
    {
        if (choices.Replace) throw new CsvFileException("bills are never rewritten: leave --replace out, and import a row whose 'corrects' names the bill");
        var tally = new ImportTally();
        var list = new List<(long Line, BillRow Row)>();
        using (var rows = new CsvRows(open(), name)) Read(rows, list, tally);
        var now = clock.GetUtcNow().ToInstant();
        try
        {
            await writer.Write(scope =>
            {
                foreach (var (line, row) in list) Keep(line, row, now, tally, scope);
                // Undone as a whole where one row is refused, or nothing is to be changed: nobody has seen it.
                if (tally.ProblemCount > 0 || choices.IsDryRun) throw new NotKept();
            }, stop);
        }
        catch (NotKept) { }
        return tally.Report(Kind, choices.IsDryRun);
    }

    static void Read(CsvRows rows, List<(long, BillRow)> list, ImportTally tally)
    {
        foreach (var column in new[] { "energy", "first", "last" })
            if (!rows.Has(column)) throw new CsvFileException($"{rows.Name}, line 1: the column '{column}' is missing; the columns are {string.Join(',', BillRow.Columns)}");
        if (rows.Columns.Except(BillRow.Columns, StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } strange)
            throw new CsvFileException($"{rows.Name}, line 1: the column '{Shown.Short(strange)}' is unknown; the columns are {string.Join(',', BillRow.Columns)}");
        var alike = new Dictionary<string, int>(StringComparer.Ordinal);
        while (rows.Read())
        {
            tally.Rows++;
            if (rows.Problem is { } broken) tally.Problem(rows.Line, broken);
            else list.Add((rows.Line, Row(rows, alike)));
        }
    }

    static BillRow Row(CsvRows rows, Dictionary<string, int> alike)
    {
        var row = BillRow.From(column => rows[column] is not { } cell ? null : column switch
        {
            "quantity" or "energyKwh" or "amount" => rows.HasDecimalComma ? cell.Replace(',', '.') : cell,
            _ => CellText.Plain(cell),
        });
        if (row.Id is not null) return row;
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(row.ToString())))[..24];
        alike[hash] = alike.GetValueOrDefault(hash) + 1;
        return row with { Id = string.Create(CultureInfo.InvariantCulture, $"table-{hash}-{alike[hash]}") };
    }

    void Keep(long line, BillRow row, Instant now, ImportTally tally, WriteScope scope)
    {
        var result = bills.Add(row, now, scope);
        if (result.Refusal is { } refusal) tally.Problem(line, refusal);
        else if (result.IsNew) tally.Added++;
        else tally.Known++;
    }

    sealed class NotKept : Exception;
}
