using System.CommandLine;
using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Export;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.Money;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Commands;

/// <summary>Writes a table that import takes back. Looks at the store from beside: a running service does not notice.</summary>
static class ExportCommand
{
    public static Command Make(TimeProvider clock)
    {
        var file = new Argument<string>("FILE") { Description = "CSV file to write, compressed when it ends in .gz; - writes standard output" };
        var kind = new Option<string>("--kind") { Description = $"What to write: {string.Join(", ", FileImport.Kinds)}", Required = true };
        kind.AcceptOnlyFromAmong([.. FileImport.Kinds]);
        var from = new Option<string?>("--from") { Description = "First day or time, e.g. 2026-03-01 or 2026-03-01T06:00:00Z; left out: from the beginning" };
        var to = new Option<string?>("--to") { Description = "Day or time before which it ends; left out: now" };
        var channel = new Option<string?>("--channel") { Description = "Only this channel (APPLIANCE/CHANNEL), or for the logbook only this appliance" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("export", "Writes readings, the logbook or all bills as a CSV table that import takes back") { file, kind, from, to, channel, config };
        command.SetAction(async (parsed, stop) =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            var (start, end) = (Time(parsed.GetValue(from), "--from", plan, Instant.FromUtc(2000, 1, 1, 0, 0)), Time(parsed.GetValue(to), "--to", plan, clock.GetUtcNow().ToInstant() + Duration.FromMinutes(2)));
            var store = StoreView.Open(plan.DataDirectory);
            var name = parsed.GetValue(file)!;
            await using var studio = OfflineStudio.Beside(plan, clock);
            long Write(Stream target, bool isCompressed) => parsed.GetValue(kind) switch
            {
                ReadingImport.Kind => new ReadingExport(store).Write(target, isCompressed, parsed.GetValue(channel), start, end, stop),
                LogbookImport.Kind => new LogbookExport(store).Write(target, isCompressed, parsed.GetValue(channel), start, end, stop),
                _ => new BillExport(studio.The<BillBook>()).Write(target, isCompressed),
            };
            if (name == "-")
            {
                Write(Console.OpenStandardOutput(), false);
                return CommandLine.Done;
            }
            var rows = NewFile.Write(name, target => Write(target, name.EndsWith(".gz", StringComparison.Ordinal)));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {rows:N0} rows."));
            return CommandLine.Done;
        });
        return command;
    }

    /// <summary>A day of the studio, or a time.</summary>
    /// <exception cref="CsvFileException">The text is neither.</exception>
    internal static Instant Time(string? text, string option, StudioPlan plan, Instant otherwise)
    {
        if (text is null) return otherwise;
        if (LocalDatePattern.Iso.Parse(text) is { Success: true } day) return plan.Zone.AtStartOfDay(day.Value).ToInstant();
        var (at, problem) = StudioTime.Parse(text, plan.Zone);
        return problem is null ? at : throw new CsvFileException($"{option}: '{text}' is neither a day such as 2026-03-01 nor a time such as 2026-03-01T06:00:00Z");
    }
}
