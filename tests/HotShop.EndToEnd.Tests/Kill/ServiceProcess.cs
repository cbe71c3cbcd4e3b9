using System.Diagnostics;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>The real program, started as <c>hotshop run</c> in a process of its own.</summary>
sealed class ServiceProcess : IAsyncDisposable
{
    readonly Process process;
    readonly List<string> said = [];

    ServiceProcess(string configuration)
    {
        // Beside the tests lies a copy without its pages; this is the program as it was built.
        var build = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        var program = Path.Combine(Repository.Root, "src/HotShop.Monitor/bin", build, "net10.0/hotshop.dll");
        process = Process.Start(new ProcessStartInfo("dotnet", [program, "run", "--config", configuration]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>What it has printed, for the message of a failing test.</summary>
    public string Said
    {
        get { lock (said) return string.Join('\n', said.TakeLast(40)); }
    }

    public bool HasEnded => process.HasExited;

    public static async Task<ServiceProcess> Start(string configuration)
    {
        var service = new ServiceProcess(configuration);
        await Patience.Until(() => service.Said.Contains("pages at http://", StringComparison.Ordinal) || service.HasEnded, () => $"the service starts; it says\n{service.Said}");
        Assert.False(service.HasEnded, $"the service ended at once:\n{service.Said}");
        return service;
    }

    /// <summary>SIGKILL: it gets no chance to finish anything.</summary>
    public async Task Kill()
    {
        process.Kill();
        await Patience.For(process.WaitForExitAsync());
    }

    /// <summary>SIGTERM, and its exit status.</summary>
    public async Task<int> Stop()
    {
        using var signal = Process.Start(Mosquitto.Find("kill"), ["-TERM", $"{process.Id}"]);
        await Patience.For(process.WaitForExitAsync());
        return process.ExitCode;
    }

    void Keep(string? line)
    {
        if (line is not null) lock (said) said.Add(line);
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) await Kill();
        process.Dispose();
    }
}
