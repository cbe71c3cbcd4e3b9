using System.CommandLine;
using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Replay;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Commands;

/// <summary>Says what comes out differently when the past is computed again; applied, writes it. Without --apply it only looks, beside a running service too.</summary>
static class ReplayCommand
{
    static readonly InstantPattern minute = InstantPattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd HH':'mm'Z'");

    public static Command Make(TimeProvider clock)
    {
        var from = new Option<string>("--from") { Description = "First day or time, e.g. 2026-03-01", Required = true };
        var to = new Option<string>("--to") { Description = "Day or time before which it ends", Required = true };
        var apply = new Option<bool>("--apply") { Description = "Write derived rows again; readings, logbook and alarm history stay" };
        var all = new Option<bool>("--all") { Description = "List every difference kept, not the first ten of each part" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("replay", "Computes the past again with the configuration of its time, and prints what differs; calls nobody") { from, to, apply, all, config };
        command.SetAction(async (parsed, stop) =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            var (start, end) = (ExportCommand.Time(parsed.GetValue(from), "--from", plan, default), ExportCommand.Time(parsed.GetValue(to), "--to", plan, default));
            if (start >= end) throw new CsvFileException("--from is not before --to: swap them");
            Print(await Run(plan, clock, start, end, parsed.GetValue(apply), stop), parsed.GetValue(all) ? int.MaxValue : 10);
            return CommandLine.Done;
        });
        return command;
    }

    static async Task<ReplayReport> Run(StudioPlan plan, TimeProvider clock, Instant from, Instant to, bool apply, CancellationToken stop)
    {
        if (apply && StoreLock.IsHeld(plan.DataDirectory))
            return await LocalCall.Send<ReplayReport>(plan, $"replay?from={InstantPattern.ExtendedIso.Format(from)}&to={InstantPattern.ExtendedIso.Format(to)}", new ByteArrayContent([]), stop);
        await using var studio = apply ? OfflineStudio.Open(plan, clock) : OfflineStudio.Beside(plan, clock);
        return await studio.The<StudioReplay>().Run(from, to, apply, stop);
    }

    static void Print(ReplayReport report, int most)
    {
        Console.WriteLine(Text($"{minute.Format(report.From)} to {minute.Format(report.To)}, computed again in {report.Seconds:0.0} s."));
        if (report.Changes.Count > 0) Console.WriteLine("The configuration changed:");
        foreach (var change in report.Changes) Console.WriteLine($"  {minute.Format(change.At)}  {change.What}: {change.Was} -> {change.Now}");
        foreach (var part in report.Parts)
        {
            Console.WriteLine(Text($"{part.Name}: {part.Checked:N0} computed, {part.Differing:N0} differ{Left(part)}."));
            foreach (var difference in part.Differences.Take(most)) Console.WriteLine($"  {minute.Format(difference.At)}  {difference.What}: {difference.Was} -> {difference.Now}");
            if (part.Differing > Math.Min(most, part.Differences.Count)) Console.WriteLine(Text($"  and {part.Differing - Math.Min(most, part.Differences.Count):N0} more"));
        }
        Console.WriteLine(report.IsApplied ? "Written again: rows that are derived. The history of alarms stays as it was; nobody was called."
            : report.Differing == 0 ? "Everything comes out as it was." : "Nothing was changed; --apply writes derived rows again. The history of alarms always stays.");
    }

    static string Left(ReplayPart part) => part switch
    {
        { Left: 0 } => "",
        { Name: "figures of days" } => Text($"; of {part.Left:N0} days nothing was stated yet, --apply states them"),
        _ => Text($"; {part.Left:N0} are left as they are, as their readings are no longer kept or they wait to be added up"),
    };

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
