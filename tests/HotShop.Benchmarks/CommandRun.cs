using System.Diagnostics;

namespace HotShop.Benchmarks;

/// <summary>What one command of the service took, in a process of its own; start of the program included.</summary>
/// <param name="ProcessorSeconds">Of all its threads; as of the last look, at most some hundredths of a second before its end.</param>
/// <param name="PeakMegabytes">Most memory it had at once, 10^6 bytes.</param>
sealed record CommandRun(int ExitCode, double Seconds, double ProcessorSeconds, double PeakMegabytes, IReadOnlyList<string> Lines, IReadOnlyList<string> Errors)
{
    static readonly TimeSpan look = TimeSpan.FromMilliseconds(20);

    /// <summary>Runs `hotshop` as a user does, and watches it to its end.</summary>
    public static async Task<CommandRun> Of(TimeProvider clock, params string[] arguments)
    {
        var watch = Stopwatch.StartNew();
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "hotshop.dll"), .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        var (processor, peak) = (TimeSpan.Zero, 0L);
        var end = process.WaitForExitAsync();
        while (await Task.WhenAny(end, Task.Delay(look, clock)) != end)
        {
            try
            {
                process.Refresh();
                (processor, peak) = (process.TotalProcessorTime, Math.Max(peak, process.PeakWorkingSet64));
            }
            catch (InvalidOperationException) { }   // it has just ended
        }
        return new CommandRun(process.ExitCode, watch.Elapsed.TotalSeconds, processor.TotalSeconds, peak / 1e6, Split(await output), Split(await errors));
    }

    public override string ToString() => FormattableString.Invariant($"{Seconds,7:0.0} s, processor {ProcessorSeconds,6:0.0} s, most memory {PeakMegabytes,5:0} MB");

    static string[] Split(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
