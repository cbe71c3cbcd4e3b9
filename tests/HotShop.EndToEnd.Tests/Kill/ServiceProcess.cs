using System.Diagnostics;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>The real program, in a process of its own.</summary>
sealed class ServiceProcess : IAsyncDisposable
{
    readonly Process process;
    readonly List<string> said = [], complaints = [];

    ServiceProcess(IEnumerable<string> arguments, string? folder)
    {
        // Beside the tests lies a copy without its pages; this is the program as it was built.
        var build = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        var program = Path.Combine(Repository.Root, "src/HotShop.Monitor/bin", build, "net10.0/hotshop.dll");
        process = Process.Start(new ProcessStartInfo("dotnet", [program, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder ?? "" })!;
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) =>
        {
            if (line.Data is null) return;
            lock (said) complaints.Add(line.Data);
            Keep(line.Data);
        };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>What it has printed, for the message of a failing test.</summary>
    public string Said
    {
        get { lock (said) return string.Join('\n', said.TakeLast(40)); }
    }

    public bool HasEnded => process.HasExited;

    /// <summary>All lines on standard error so far.</summary>
    public IReadOnlyList<string> Complaints
    {
        get { lock (said) return [.. complaints]; }
    }

    /// <summary><c>hotshop run</c>, once it says that it has started.</summary>
    public static Task<ServiceProcess> Start(string configuration) => Start("pages at http://", "run", "--config", configuration);

    /// <summary>Any command that goes on, once it has said some words.</summary>
    public static async Task<ServiceProcess> Start(string words, params string[] arguments)
    {
        var service = new ServiceProcess(arguments, null);
        await Patience.Until(() => service.Said.Contains(words, StringComparison.Ordinal) || service.HasEnded, () => $"the service starts; it says\n{service.Said}");
        Assert.False(service.HasEnded, $"the service ended at once:\n{service.Said}");
        return service;
    }

    /// <summary>Any command, at once: for one that is killed before it is done.</summary>
    public static ServiceProcess Begin(params string[] arguments) => new(arguments, null);

    /// <summary>Any command that ends by itself, with its exit status.</summary>
    /// <param name="folder">Where it is run; null: here.</param>
    public static async Task<(int Status, ServiceProcess Ended)> ToItsEnd(string? folder, params string[] arguments)
    {
        var command = new ServiceProcess(arguments, folder);
        await Patience.For(command.process.WaitForExitAsync());
        return (command.process.ExitCode, command);
    }

    /// <summary>SIGKILL: it gets no chance to finish anything.</summary>
    public async Task Kill()
    {
        process.Kill();
        await Patience.For(process.WaitForExitAsync());
    }

    /// <summary>SIGSTOP: it answers nobody, as when its disk hangs; what is sent to it waits unacknowledged.</summary>
    public async Task Freeze()
    {
        using var signal = Process.Start(Mosquitto.Find("kill"), ["-STOP", $"{process.Id}"]);
        await Patience.For(signal.WaitForExitAsync());
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
