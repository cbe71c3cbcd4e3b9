using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using HotShop.Benchmarks.Live;
using HotShop.Evaluation;
using HotShop.Monitor.Configuration;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Benchmarks;

/// <summary>
/// `hotshop import` of a table of readings: with bad rows in it, which must all be named and keep all others out; mended; computed again by `hotshop replay`;
/// and into a running service beside a device, whose readings must not wait for it.
/// </summary>
static class ImportBenchmark
{
    const int BadRows = 20, Wrong = 2;
    static readonly TimeSpan pause = TimeSpan.FromMilliseconds(20), without = TimeSpan.FromSeconds(15);

    public static async Task Run(string folder, int rows, TimeProvider clock, TextWriter lines)
    {
        var last = Instant.FromUnixTimeSeconds(clock.GetUtcNow().ToInstant().ToUnixTimeSeconds() / 3600 * 3600);
        var (bad, mended) = (Path.Combine(folder, "bad.csv"), Path.Combine(folder, "mended.csv"));
        var first = Write(mended, rows, last, []);
        var lineNumbers = Enumerable.Range(0, BadRows).Select(i => 2 + i * (rows / BadRows) + rows / BadRows / 2).ToHashSet();
        Write(bad, rows, last, lineNumbers);
        await lines.WriteLineAsync(FormattableString.Invariant($"{rows:N0} rows, 30 channels every 10 s, {new FileInfo(mended).Length / 1e6:0.0} MB"));
        await Alone(folder, bad, mended, lineNumbers, (first, last), rows, clock, lines);
        await Beside(Directory.CreateDirectory(Path.Combine(folder, "live")).FullName, mended, clock, lines);
    }

    static async Task Alone(string folder, string bad, string mended, HashSet<int> lineNumbers, (Instant First, Instant Last) span, int rows, TimeProvider clock, TextWriter lines)
    {
        var file = Path.Combine(folder, "hotshop.json");
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(ThirtyChannels.Configuration(Path.Combine(folder, "data"), new StoreOptions()), ConfigurationFile.Json));
        var refused = await CommandRun.Of(clock, "import", bad, "--kind", "readings", "--config", file);
        var named = refused.Errors.Where(e => e.Contains(", line ", StringComparison.Ordinal)).Select(e => int.Parse(e.Split(", line ")[1].Split(':')[0], CultureInfo.InvariantCulture)).ToHashSet();
        var stored = Stored(folder);
        if (refused.ExitCode != Wrong || !named.SetEquals(lineNumbers) || stored != 0)
            throw new InvalidOperationException($"bad rows: exit {refused.ExitCode}, {named.Count} of {lineNumbers.Count} named, {stored} readings stored; {string.Join(" | ", refused.Errors.Take(3))}");
        await lines.WriteLineAsync($"{BadRows} bad rows among them, all named by line and nothing stored: {refused}");

        var taken = await CommandRun.Of(clock, "import", mended, "--kind", "readings", "--config", file);
        if (taken.ExitCode != 0 || Stored(folder) != rows) throw new InvalidOperationException($"mended: exit {taken.ExitCode}, {Stored(folder)} of {rows} stored; {string.Join(" | ", taken.Errors.Take(3))}");
        await lines.WriteLineAsync(FormattableString.Invariant($"mended, all stored: {taken}: {rows / taken.Seconds:N0} rows/s"));

        // Hours wait to be added up until a service runs; --apply adds them up, and a second replay must find them the same.
        var asked = new[] { "replay", "--from", InstantPattern.ExtendedIso.Format(span.First), "--to", InstantPattern.ExtendedIso.Format(span.Last), "--config", file };
        var applied = await CommandRun.Of(clock, [.. asked, "--apply"]);
        await lines.WriteLineAsync($"replay --apply, which adds its hours up: {applied}");
        var again = await CommandRun.Of(clock, asked);
        if (!again.Lines.Contains("Everything comes out as it was.")) throw new InvalidOperationException(string.Join('\n', again.Lines.Concat(again.Errors)));
        await lines.WriteLineAsync($"replay of it, none differs: {again}");
    }

    static async Task Beside(string folder, string mended, TimeProvider clock, TextWriter lines)
    {
        await using var push = await PushReceiver.Start();
        using var mail = new SlowMail(clock);
        await using var studio = await LiveStudio.Start(folder, push.Url, mail.Port, new Dictionary<string, string>(), clock);
        await using var device = await Device.Connect(studio.MqttPort, "beside", default);
        var before = await Send(device, Task.Delay(without, clock), clock);
        await lines.WriteLineAsync($"a running service, a device alone: {Text(before)}");
        var import = CommandRun.Of(clock, "import", mended, "--kind", "readings", "--config", Path.Combine(folder, "hotshop.json"));
        var meanwhile = await Send(device, import, clock);
        var run = await import;
        if (run.ExitCode != 0) throw new InvalidOperationException(string.Join('\n', run.Errors));
        await lines.WriteLineAsync(FormattableString.Invariant($"the import beside it, {run.Seconds:0.0} s, service's most memory {studio.PeakMegabytes:0} MB: {Text(meanwhile)}"));
    }

    /// <summary>Sends reading after reading until something is over; each is durable when it is acknowledged.</summary>
    static async Task<List<double>> Send(Device device, Task until, TimeProvider clock)
    {
        var milliseconds = new List<double>();
        while (!until.IsCompleted)
        {
            var watch = Stopwatch.StartNew();
            await device.Publish($"furnace-{LiveStudio.Devices}", "crown", ThirtyChannels.Value("crown", milliseconds.Count), clock.GetUtcNow(), default);
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
            await Task.Delay(pause, clock);
        }
        return milliseconds;
    }

    static string Text(List<double> ms) =>
        FormattableString.Invariant($"{ms.Count} readings acknowledged after {Sorted.Quantile(ms, 0.5):0} ms in the median, {Sorted.Quantile(ms, 0.99):0} ms at the 99th percentile, {ms.Max():0} ms at the longest");

    /// <returns>Time of the first row.</returns>
    static Instant Write(string file, int rows, Instant last, HashSet<int> badLines)
    {
        var topics = ThirtyChannels.Topics.ToArray();
        var samples = (rows + topics.Length - 1) / topics.Length;
        var first = last - Duration.FromSeconds((long)samples * ThirtyChannels.IntervalSeconds);
        using var writer = new StreamWriter(file);
        writer.WriteLine("channel,time,value");
        for (var row = 0; row < rows; row++)
        {
            var (at, (_, appliance, channel)) = (first + Duration.FromSeconds((long)(row / topics.Length) * ThirtyChannels.IntervalSeconds), topics[row % topics.Length]);
            var value = ThirtyChannels.Value(channel, at.ToUnixTimeSeconds() / ThirtyChannels.IntervalSeconds);
            writer.WriteLine(badLines.Contains(row + 2)
                ? (row % 2 == 0 ? $"{appliance}/{channel},{at},hot" : FormattableString.Invariant($"{appliance}/nowhere,{at},{value}"))
                : FormattableString.Invariant($"{appliance}/{channel},{at},{value}"));
        }
        return first;
    }

    static long Stored(string folder)
    {
        var database = Path.Combine(folder, "data", "hotshop.db");
        if (!File.Exists(database)) return 0;
        using var connection = new SqliteConnection($"Data Source={database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT (SELECT count(*) FROM reading) + (SELECT count(*) FROM arrival)";
        return (long)command.ExecuteScalar()!;
    }
}
