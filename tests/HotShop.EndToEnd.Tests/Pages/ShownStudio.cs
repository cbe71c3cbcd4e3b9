using System.Net.Http.Json;
using System.Text.Json;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary><c>hotshop demo</c> in a process of its own, once its sensors are heard. All page tests look at the same one.</summary>
public sealed class ShownStudio : IAsyncLifetime
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-shown-").FullName;
    readonly int port = Ports.Free();
    ServiceProcess service = null!;
    DateTimeOffset start;

    public string Address => $"http://127.0.0.1:{port}";
    internal HttpClient Http { get; } = new();

    public async ValueTask InitializeAsync()
    {
        service = await ServiceProcess.Start("Stop with Ctrl+C", "demo", "--speed", "600", "--port", $"{port}", "--data", folder);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(200), new RealClock());
        while (!(await Http.GetStringAsync($"{Address}/api/appliances")).Contains("\"good\"", StringComparison.Ordinal)) await tick.WaitForNextTickAsync();
        start = (await Http.GetFromJsonAsync<JsonElement>($"{Address}/api/studio")).GetProperty("now").GetDateTimeOffset();
    }

    internal async Task<JsonElement> Ask(string path) => await Http.GetFromJsonAsync<JsonElement>(Address + path, TestContext.Current.CancellationToken);

    /// <summary>Waits until the studio has so much of a day behind it.</summary>
    internal async Task HasRun(TimeSpan time)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(500), new RealClock());
        while ((await Ask("/api/studio")).GetProperty("now").GetDateTimeOffset() < start + time) await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await using (service) await service.Stop();
        var errors = ServiceLog.Errors(folder);
        Directory.Delete(folder, recursive: true);
        Assert.Empty(errors);
    }
}

[CollectionDefinition("pages")]
public sealed class SharedPages : ICollectionFixture<Chromium>, ICollectionFixture<ShownStudio>;
