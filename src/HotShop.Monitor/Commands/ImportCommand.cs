using System.CommandLine;
using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Commands;

/// <summary>Imports a table into the running service, or into the store where none runs.</summary>
static class ImportCommand
{
    public static Command Make(TimeProvider clock)
    {
        var file = new Argument<string>("FILE") { Description = "CSV file, compressed with gzip or not; - reads standard input" };
        var kind = new Option<string>("--kind") { Description = $"What the table holds: {string.Join(", ", FileImport.Kinds)}", Required = true };
        kind.AcceptOnlyFromAmong([.. FileImport.Kinds]);
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would happen, and change nothing" };
        var replace = new Option<bool>("--replace") { Description = "Where the store says something else, the file is right" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("import", "Imports a CSV table: all of it, or nothing and a line for each bad row") { file, kind, dryRun, replace, config };
        command.SetAction(async (parsed, stop) =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            var choices = new ImportChoices(parsed.GetValue(dryRun), parsed.GetValue(replace));
            var name = parsed.GetValue(file)!;
            using var aside = name == "-" ? await Aside(stop) : null;
            var path = aside?.Name ?? name;
            if (!File.Exists(path)) throw new History.Csv.CsvFileException($"{path}: no such file; name one that is there, or - for standard input");
            var shown = name == "-" ? "standard input" : name;
            return Print(shown, await Run(plan, clock, parsed.GetValue(kind)!, path, shown, choices, stop));
        });
        return command;
    }

    static async Task<ImportReport> Run(StudioPlan plan, TimeProvider clock, string kind, string path, string name, ImportChoices choices, CancellationToken stop)
    {
        if (StoreLock.IsHeld(plan.DataDirectory))
        {
            using var content = new StreamContent(Open(path));
            return await LocalCall.Send<ImportReport>(plan, $"import?kind={kind}&dryRun={choices.IsDryRun}&replace={choices.Replace}&name={Uri.EscapeDataString(name)}", content, stop);
        }
        await using var studio = OfflineStudio.Open(plan, clock);
        return await studio.The<FileImport>().Run(kind, () => Open(path), name, choices, stop);
    }

    static FileStream Open(string path) => new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16);

    static async Task<FileStream> Aside(CancellationToken stop)
    {
        var aside = new FileStream(Path.GetTempFileName(), new FileStreamOptions
        {
            Mode = FileMode.Create, Access = FileAccess.ReadWrite, Share = FileShare.ReadWrite | FileShare.Delete, Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous,
        });
        await using var input = Console.OpenStandardInput();
        await input.CopyToAsync(aside, stop);
        await aside.FlushAsync(stop);
        return aside;
    }

    static int Print(string name, ImportReport report)
    {
        foreach (var problem in report.Problems) Console.Error.WriteLine($"{name}, line {problem.Line}: {problem.Reason}");
        if (report.ProblemCount > report.Problems.Count) Console.Error.WriteLine(Text($"{name}: and {report.ProblemCount - report.Problems.Count:N0} more rows like these"));
        if (!report.IsTaken)
        {
            Console.Error.WriteLine(Text($"{name}: nothing was imported, as {report.ProblemCount:N0} of {report.Rows:N0} rows cannot be taken; mend them and run the import again"));
            return CommandLine.WrongInput;
        }
        foreach (var conflict in report.ConflictList) Console.WriteLine($"  line {conflict.Line}: {conflict.Reason}");
        Console.WriteLine(Text($"{name}: {report.Rows:N0} rows{(report is { First: { } first, Last: { } last } ? $", {first} to {last}" : "")}."));
        var would = report.IsDryRun ? "would be " : "";
        Console.WriteLine(Text($"  {report.Added:N0} {would}added, {report.Known:N0} known already{(report.Replaced > 0 ? $", {report.Replaced:N0} {would}replaced" : "")}."));
        if (report.Conflicts > 0) Console.WriteLine(Text($"  {report.Conflicts:N0} say something else than what is stored, which stays{(report.Kind == ReadingImport.Kind ? "; --replace takes the file's" : "")}."));
        if (report.Closed > 0) Console.WriteLine(Text($"  {report.Closed:N0} left out: their hours are added up and the readings of that time no longer kept; --replace takes the file's for the whole hour."));
        return CommandLine.Done;
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
