using System.Net.ServerSentEvents;
using System.Text.Json;
using HotShop.Monitor.Live;
using HotShop.Monitor.Tests.Support;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Web;

/// <summary>Live values for open pages.</summary>
public sealed class LiveTests : IAsyncLifetime
{
    static readonly TimeSpan pace = TimeSpan.FromMilliseconds(250);
    TestService service = null!;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => service = await TestService.Start();

    public ValueTask DisposeAsync() => service.DisposeAsync();

    async Task<IAsyncEnumerator<SseItem<string>>> Page()
    {
        var stream = await service.Http.GetStreamAsync(new Uri("/api/live", UriKind.Relative), Stop);
        var events = SseParser.Create(stream).EnumerateAsync(Stop).GetAsyncEnumerator(Stop);
        Assert.True(await events.MoveNextAsync());
        Assert.Equal("hello", events.Current.EventType);
        return events;
    }

    [Fact]
    public async Task A_burst_of_readings_is_one_update_with_the_newest_of_each_channel()
    {
        await using var page = await Page();
        for (var i = 0; i < 100; i++) await service.Send("furnace-1/crown", OpenStudio.Timed(1100 + i, service.Now - Seconds(10 - i * 0.1)));
        await service.Send("furnace-1/flame", "1");
        service.Clock.Advance(pace);
        Assert.True(await page.MoveNextAsync());
        Assert.Equal("reading", page.Current.EventType);
        var update = JsonSerializer.Deserialize<JsonElement>(page.Current.Data).EnumerateArray().ToDictionary(r => r.GetProperty("id").GetString()!);
        Assert.Equal(2, update.Count);
        Assert.Equal((1199, "Cel", "good"), (update["quillmere/furnace-1/crown"].GetProperty("value").GetDouble(), update["quillmere/furnace-1/crown"].GetProperty("unit").GetString(), update["quillmere/furnace-1/crown"].GetProperty("quality").GetString()));
        Assert.EndsWith("Z", update["quillmere/furnace-1/flame"].GetProperty("at").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_logged_entry_arrives_on_the_open_pages()
    {
        await using var page = await Page();
        await service.Log(new { appliance = "furnace-1", entry = "gather", id = "g1", size = "large" });
        service.Clock.Advance(pace);
        Assert.True(await page.MoveNextAsync());
        Assert.Equal(("log", "g1"), (page.Current.EventType, JsonSerializer.Deserialize<JsonElement>(page.Current.Data)[0].GetProperty("id").GetString()));
    }

    [Fact]
    public async Task An_open_page_does_not_hold_up_the_end()
    {
        await using var page = await Page();
        Assert.Equal(1, service.The<LiveFeed>().Open);
        // The host would wait for half a minute; the page has to go at once.
        await service.Stop().WaitAsync(TimeSpan.FromSeconds(15), Stop);
        Assert.Equal(0, service.The<LiveFeed>().Open);
    }

    [Fact]
    public async Task The_lock_is_free_and_the_log_has_a_first_line_after_the_end()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-service-").FullName;
        for (var round = 0; round < 2; round++)
        {
            var one = await TestService.Start(folder: folder);
            await one.Stop();
            // Not one.DisposeAsync, which takes the folder away.
            one.Http.Dispose();
            await one.Close();
        }
        var lines = await File.ReadAllTextAsync(Directory.GetFiles(Path.Combine(folder, "logs")).Single(), Stop);
        Assert.Contains("hotshop 0.1.0", lines, StringComparison.Ordinal);
        Assert.Contains(folder, lines, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }
}
