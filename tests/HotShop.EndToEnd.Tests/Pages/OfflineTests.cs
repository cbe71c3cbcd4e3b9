using System.Net.Http.Json;
using System.Text.Json;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>The pot page while the service is really gone: its process is stopped, and started again on the same data.</summary>
[Collection("pages")]
public sealed class OfflineTests(Chromium chromium) : IAsyncLifetime
{
    const string Queue = "JSON.parse(localStorage.getItem('hotshop.entries') ?? '[]')";

    readonly string folder = Directory.CreateTempSubdirectory("hotshop-offline-").FullName;
    readonly int port = Ports.Free();
    readonly HttpClient http = new();
    ServiceProcess service = null!;

    string Address => $"http://127.0.0.1:{port}";

    public async ValueTask InitializeAsync() => await Begin();

    public async ValueTask DisposeAsync()
    {
        http.Dispose();
        if (isRunning) await service.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    bool isRunning;

    async Task Begin()
    {
        service = await ServiceProcess.Start("Stop with Ctrl+C", "demo", "--speed", "1", "--port", $"{port}", "--data", folder);
        isRunning = true;
    }

    async Task End()
    {
        isRunning = false;
        await using (service) await service.Stop();
    }

    /// <summary>Entries that hold, of those with these ids.</summary>
    async Task<List<JsonElement>> Kept(IReadOnlyCollection<string> ids)
    {
        var all = await http.GetFromJsonAsync<JsonElement>($"{Address}/api/logbook?appliance=furnace-1&corrected=true", TestContext.Current.CancellationToken);
        return [.. all.EnumerateArray().Where(e => ids.Contains(e.GetProperty("id").GetString()!))];
    }

    static Task<string[]> Waiting(IPage page) => page.EvaluateAsync<string[]>($"{Queue}.filter(w => w.entry.entry === 'gather').map(w => w.entry.id)");

    [Fact]
    public async Task Five_gathers_logged_on_a_page_opened_without_the_service_are_five_entries_once_each_when_it_is_back()
    {
        await using var visit = await chromium.Open($"{Address}/pot", Screen.Phone);
        await visit.Ready();
        await visit.Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => true)");
        visit.HasNoFaults();
        await visit.Until("() => localStorage.getItem('hotshop.pot-as-last-seen') !== null");
        var mass = await visit.Page.Locator("#mass").InnerTextAsync();
        visit.IsExpected = true;
        await End();

        await visit.Page.ReloadAsync();
        await visit.Page.Locator("#acts").WaitForAsync();
        Assert.Equal(mass, await visit.Page.Locator("#mass").InnerTextAsync());
        await visit.Until("() => /No connection to the service\\. The glass is as of .* ago/.test(document.getElementById('kept').textContent)");
        for (var i = 0; i < 5; i++) await visit.Page.Locator("button.gather[data-size=medium]").ClickAsync();
        await visit.Page.Locator("button.gather[data-size=large]").ClickAsync();
        await visit.Page.Locator("#undo").ClickAsync();
        var ids = await Waiting(visit.Page);
        Assert.Equal(6, ids.Length);

        await visit.Page.CloseAsync();
        var page = await visit.Context.NewPageAsync();
        await page.GotoAsync($"{Address}/pot/furnace-1");
        await page.GetByText("kept here, not sent yet").Nth(4).WaitForAsync();
        Assert.Equal(5, await page.GetByText("kept here, not sent yet").CountAsync());
        await page.GetByText("7 entries wait on this device").WaitForAsync();

        await Begin();
        await page.WaitForFunctionAsync($"() => {Queue}.length === 0");
        var kept = await Kept(ids);
        Assert.Equal(5, kept.Count);
        Assert.All(kept, e => Assert.Equal("medium", e.GetProperty("size").GetString()));
        await page.WaitForFunctionAsync("() => document.getElementById('kept').hidden");
    }

    [Fact]
    public async Task Other_pages_lead_to_the_pot_while_the_service_is_away_and_answers_of_it_are_never_kept()
    {
        await using var visit = await chromium.Open($"{Address}/pot", Screen.Phone);
        await visit.Ready();
        await visit.Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => true)");
        var kept = await visit.Page.EvaluateAsync<string[]>("""
            async () => (await Promise.all((await caches.keys()).map(async name => (await (await caches.open(name)).keys()).map(r => new URL(r.url).pathname)))).flat()
            """);
        Assert.Contains("/pot", kept);
        Assert.DoesNotContain(kept, path => path.StartsWith("/api", StringComparison.Ordinal));
        Assert.DoesNotContain("massKg", await visit.Page.EvaluateAsync<string>("caches.match('/pot').then(r => r.text())"), StringComparison.Ordinal);
        visit.IsExpected = true;
        await End();
        await visit.Page.GotoAsync($"{Address}/alarms");
        await visit.Page.Locator("#acts").WaitForAsync();
        Assert.Equal("/pot", new Uri(visit.Page.Url).AbsolutePath);
    }
}
