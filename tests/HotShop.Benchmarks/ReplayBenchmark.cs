using System.Diagnostics;
using System.Text.Json;
using HotShop.Monitor.Commands;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.History.Figures;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Benchmarks;

/// <summary>
/// `hotshop replay` of a year of thirty channels every ten seconds and a furnace's log: hours and minutes whose raw readings are kept, the alarms of their
/// time, and what was stated of every day of the year. Nothing may come out differently.
/// </summary>
static class ReplayBenchmark
{
    public static async Task Run(string folder, int rawDays, TimeProvider clock, TextWriter lines)
    {
        var options = new StoreOptions { RawDays = rawDays };
        var file = Path.Combine(folder, "hotshop.json");
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(ThirtyChannels.Configuration(folder, options) with { Store = options with { BallastMebibytes = 1 } }, ConfigurationFile.Json));
        await Write(folder, options, lines);
        var (from, to) = (InstantPattern.ExtendedIso.Format(YearOfReadings.Start), InstantPattern.ExtendedIso.Format(YearOfReadings.End));
        var run = await CommandRun.Of(clock, "replay", "--from", from, "--to", to, "--config", file);
        foreach (var line in run.Lines.Concat(run.Errors)) await lines.WriteLineAsync(line);
        await lines.WriteLineAsync($"replay of the year, start of the program included: {run}");
        if (run.ExitCode != 0 || !run.Lines.Contains("Everything comes out as it was.")) throw new InvalidOperationException("the replay found differences, or did not end well");
    }

    static async Task Write(string folder, StoreOptions options, TextWriter lines)
    {
        var watch = Stopwatch.StartNew();
        await using var studio = new BenchStudio(folder, options, YearOfReadings.End);
        YearOfReadings.Write(studio, options.RawDays);
        using (var connection = studio.Store.OpenWriter()) YearOfWork.Write(connection, studio.Plan.Appliances[0].Id, YearOfReadings.Start, YearOfReadings.Days);
        studio.Checkpoint();
        // Its own services read series and log anew; they state the days as the service does each night.
        await using var beside = OfflineStudio.Beside(studio.Plan, studio.Clock);
        var zone = studio.Plan.Zone;
        var (first, last) = (YearOfReadings.Start.InZone(zone).Date.PlusDays(1), YearOfReadings.End.InZone(zone).Date.PlusDays(-1));
        var stated = beside.The<DayFigures>().Of(beside.The<FuelBook>(), first, last, YearOfReadings.End).ToList();
        await studio.The<IStoreWriter>().Write(scope => StatedFigures.Write(stated, first, last, scope));
        studio.Checkpoint();
        await lines.WriteLineAsync(FormattableString.Invariant($"a year of {ThirtyChannels.Topics.Count()} channels every {ThirtyChannels.IntervalSeconds} s, raw rows of {options.RawDays} days, {stated.Count} figures of days; written in {watch.Elapsed.TotalSeconds:0} s, {studio.Store.Sizes().Database / 1e6:0} MB"));
    }
}
