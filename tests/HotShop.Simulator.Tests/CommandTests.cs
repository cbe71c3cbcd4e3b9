using System.Diagnostics;

namespace HotShop.Simulator.Tests;

/// <summary>The program as people start it.</summary>
public class CommandTests
{
    [Fact]
    public async Task Help_names_the_commands()
    {
        var (status, output, _) = await StartAsync("--help");
        Assert.Equal(0, status);
        Assert.Contains("simulate", output, StringComparison.Ordinal);
        Assert.Contains("summary", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_summary_prints_fuel_and_glass()
    {
        var (status, output, _) = await StartAsync("summary", "--days", "2", "--start", "2026-03-03T08:00:00+01:00", "--sample-seconds", "600");
        Assert.Equal(0, status);
        Assert.Contains("kWh/kg", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_wrong_option_is_named_on_a_line_of_its_own_and_the_status_is_2()
    {
        var (status, _, errors) = await StartAsync("simulate", "--broker", "nowhere", "--speed", "0", "--scenario", "holiday", "--fault", "meteor@furnace-1+01:00/00:10");
        Assert.Equal(2, status);
        var lines = errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(["--broker", "--speed", "--fault", "--scenario"], lines.Select(l => l.Split(':')[0]));
    }

    [Fact]
    public async Task An_unknown_option_is_wrong_usage()
    {
        var (status, _, errors) = await StartAsync("simulate", "--warp", "9");
        Assert.Equal(2, status);
        Assert.Contains("--warp", errors, StringComparison.Ordinal);
    }

    static async Task<(int Status, string Output, string Errors)> StartAsync(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "HotShop.Simulator.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await errors);
    }
}
