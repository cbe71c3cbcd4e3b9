using System.Globalization;
using System.Text;
using HotShop.Monitor.History;
using HotShop.Monitor.History.Export;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Tests.History;

/// <summary>Tables as files, and studios that take them.</summary>
static class Tables
{
    public static OpenStudio Open(HotShop.Monitor.Configuration.StudioConfiguration? configuration = null, Instant? now = null) => OpenStudio.Open(configuration, now, c => c.AddHistory());

    public static Task<ImportReport> Import(this OpenStudio studio, string kind, string table, bool dryRun = false, bool replace = false) =>
        studio.Import(kind, Encoding.UTF8.GetBytes(table), dryRun, replace);

    public static Task<ImportReport> Import(this OpenStudio studio, string kind, byte[] table, bool dryRun = false, bool replace = false) =>
        studio.The<FileImport>().Run(kind, () => new MemoryStream(table, writable: false), "table.csv", new ImportChoices(dryRun, replace), default);

    public static Task<ImportReport> Readings(this OpenStudio studio, string table, bool dryRun = false, bool replace = false) => studio.Import("readings", table, dryRun, replace);

    public static string Of(string channel, IEnumerable<(Instant At, double Value)> readings) =>
        "channel,time,value\r\n" + string.Concat(readings.Select(r => string.Create(CultureInfo.InvariantCulture, $"{channel},{InstantPattern.ExtendedIso.Format(r.At)},{r.Value:R}\r\n")));

    public static byte[] ExportReadings(this OpenStudio studio, bool isCompressed = false)
    {
        using var file = new MemoryStream();
        new ReadingExport(studio.Store).Write(file, isCompressed, null, OpenStudio.Start - Duration.FromDays(4000), studio.Now + Duration.FromDays(1), default);
        return file.ToArray();
    }

    public static byte[] ExportLogbook(this OpenStudio studio)
    {
        using var file = new MemoryStream();
        new LogbookExport(studio.Store).Write(file, false, null, OpenStudio.Start - Duration.FromDays(4000), studio.Now + Duration.FromDays(1), default);
        return file.ToArray();
    }
}
