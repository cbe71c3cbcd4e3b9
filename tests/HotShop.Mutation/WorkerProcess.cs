using System.Diagnostics;
using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>A worker seen from outside: asked, waited for, ended when it takes too long.</summary>
sealed class WorkerProcess(IReadOnlyList<string> arguments) : IDisposable
{
    /// <summary>The checks take a fraction of a second.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>Load contexts that a library's caches keep alive cost memory: a fresh process after so many.</summary>
    const int Lifetime = 400;

    Process? process;
    int asked;

    public async Task<Answer> Ask(Question question)
    {
        if (asked++ % Lifetime == 0) Dispose();
        process ??= await Start();
        await process.StandardInput.WriteLineAsync(JsonSerializer.Serialize(question));
        await process.StandardInput.FlushAsync();
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            var line = await process.StandardOutput.ReadLineAsync(patience.Token);
            if (line is not null) return JsonSerializer.Deserialize<Answer>(line)!;
            Dispose();
            return new("red", "the checks ended the process", question.AsInteger);
        }
        catch (OperationCanceledException)
        {
            Dispose();
            return new("red", "the checks came to no end", question.AsInteger);
        }
    }

    public void Dispose()
    {
        if (process is null) return;
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        process.Dispose();
        process = null;
    }

    async Task<Process> Start()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(WorkerProcess).Assembly.Location, .. arguments]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        var worker = Process.Start(start)!;
        var ready = await worker.StandardOutput.ReadLineAsync();
        return ready == "ready" ? worker : throw new InvalidOperationException("the worker did not start");
    }
}
