using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.History.Csv;

/// <summary>Writes a CSV file (RFC 4180: commas, CR LF, quotes where needed) that import takes back and spreadsheets open without running anything.</summary>
sealed class CsvLines : IDisposable
{
    readonly CsvWriter writer;

    /// <param name="file">Closed with the lines.</param>
    public CsvLines(Stream file, bool isCompressed, params IEnumerable<string> header)
    {
        var target = isCompressed ? new GZipStream(file, CompressionLevel.Optimal) : file;
        writer = new CsvWriter(new StreamWriter(target, new UTF8Encoding(false), 1 << 16), new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n", ShouldQuote = a => CellText.NeedsQuotes(a.Field, ",") });
        foreach (var column in header) writer.WriteField(column);
        writer.NextRecord();
    }

    /// <summary>A number as the shortest text that reads back to the same bits.</summary>
    public CsvLines Number(double value) => Raw(value.ToString("R", CultureInfo.InvariantCulture));

    public CsvLines Text(string? text) => Raw(text is null ? "" : CellText.Guard(text));

    /// <summary>A cell that is no free text: an id of ours, a unit, a time.</summary>
    public CsvLines Raw(string text)
    {
        writer.WriteField(text);
        return this;
    }

    public void End() => writer.NextRecord();

    public void Dispose() => writer.Dispose();
}
