using HotShop.Monitor.History.Csv;

namespace HotShop.Monitor.History.Import;

/// <summary>The kinds of table that can be imported.</summary>
sealed class FileImport(ReadingImport readings, LogbookImport logbook, BillImport bills)
{
    public static readonly IReadOnlyList<string> Kinds = [ReadingImport.Kind, LogbookImport.Kind, BillImport.Kind];

    /// <param name="open">Opens the file at its beginning; called more than once.</param>
    /// <exception cref="CsvFileException">The file is no such table, or the choice does not fit its kind.</exception>
    public Task<ImportReport> Run(string kind, Func<Stream> open, string name, ImportChoices choices, CancellationToken stop) => kind switch
    {
        ReadingImport.Kind => readings.Run(open, name, choices, stop),
        LogbookImport.Kind => logbook.Run(open, name, choices, stop),
        BillImport.Kind => bills.Run(open, name, choices, stop),
        _ => throw new CsvFileException($"there is no kind '{kind}'; write one of {string.Join(", ", Kinds)}"),
    };
}
