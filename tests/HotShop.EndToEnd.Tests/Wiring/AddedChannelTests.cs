using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Pages;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Broker;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Wiring;

/// <summary>A strange device shows up on the set-up page of <c>hotshop run</c>, and one tap takes it in while readings pour in.</summary>
public sealed partial class AddedChannelTests(Chromium chromium, ITestOutputHelper output) : IClassFixture<Chromium>
{
    const string Crown = "hotshop/quillmere/furnace-1/crown", Strange = "furnace/x", Bundle = "zigbee/annealer-1";
    const string Hostile = "<img src=x onerror=document.title='owned'>";

    static readonly RealClock clock = new();

    [GeneratedRegex("set-up code ([A-Z0-9-]+)")]
    private static partial Regex SetUpCode();

    volatile bool isEnough;
    volatile int sent;

    /// <summary>For ever until told: the furnace's own channel and a strange topic by turns, each with its time; now and then what nobody should trust.</summary>
    IEnumerable<(string Topic, string Payload)> Messages(DateTimeOffset start)
    {
        yield return (Hostile, "<script>document.title='owned'</script>");
        for (var i = 0; !isEnough; i++)
        {
            sent = i + 1;
            var time = start.AddMilliseconds(100 * i).ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture);
            yield return (Crown, string.Create(CultureInfo.InvariantCulture, $"{{\"value\":{1000 + i / 100.0:R},\"time\":\"{time}\"}}"));
            yield return (Strange, string.Create(CultureInfo.InvariantCulture, $"{{\"value\":{1001 + i / 100.0:R},\"time\":\"{time}\"}}"));
            if (i % 20 == 0) yield return (Bundle, string.Create(CultureInfo.InvariantCulture, $"{{\"temperature\":481.5,\"battery\":97,\"at\":\"{time}\"}}"));
        }
    }

    [Fact]
    public async Task One_tap_takes_a_strange_sensor_in_and_no_reading_is_lost_while_the_service_begins_again()
    {
        using var folder = new TemporaryFolder();
        int pages = Ports.Free(), broker = Ports.Free();
        var file = folder.Write("hotshop.json", $$"""
            // The owner's own words stay as they are.
            { "site": "quillmere", "dataDirectory": "data", "http": { "listen": "127.0.0.1:{{pages}}" }, "broker": { "listen": "127.0.0.1:{{broker}}" }, "store": { "ballastMebibytes": 1 },
              "appliances": [
                { "id": "furnace-1", "name": "Furnace 1", "kind": "furnace", "channels": [ { "id": "crown", "quantity": "temperature" } ] },
                { "id": "annealer-1", "name": "Annealer 1", "kind": "annealer", "channels": [ { "id": "shelf", "quantity": "temperature" } ] } ] }
            """);
        var written = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await using var service = await ServiceProcess.Start(file);
        var start = clock.GetUtcNow().AddHours(-1);
        var publishing = new ResendingDevice(broker).Publish(Messages(start), perSecond: 200);
        await using var visit = await SignIn(service, $"http://127.0.0.1:{pages}");

        await visit.Until("() => [...document.querySelectorAll('#unknown-list > li')].length === 3");
        Assert.Equal(0, await visit.Page.Locator("#unknown-list img, #unknown-list script").CountAsync());
        Assert.NotEqual("owned", await visit.Page.TitleAsync());
        await visit.Page.GetByText(Hostile).First.WaitForAsync();
        Assert.Empty(EveryPageTests.Serious(await visit.Page.RunAxe()));
        await Picture(visit, "card");

        // One tap.
        visit.IsExpected = true;
        var tapped = clock.GetTimestamp();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add as temperature of Furnace 1" }).ClickAsync();
        await visit.Until("topic => [...document.querySelectorAll('.wire code')].some(c => c.textContent === topic)", Strange);
        output.WriteLine($"from the tap to the page with the new channel: {clock.GetElapsedTime(tapped).TotalSeconds:0.0} s");
        visit.IsExpected = false;

        // The other card through its form.
        await visit.Ready();
        var card = visit.Page.Locator("#unknown-list > li", new() { HasText = Bundle });
        await card.GetByRole(AriaRole.Button, new() { Name = "It is something else" }).ClickAsync();
        await Picture(visit, "form");
        visit.IsExpected = true;
        await card.GetByRole(AriaRole.Button, new() { Name = "Add this channel" }).ClickAsync();
        await visit.Until("topic => [...document.querySelectorAll('.wire code')].some(c => c.textContent === topic)", Bundle);
        visit.IsExpected = false;
        Assert.Equal(written, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));

        var data = Path.Combine(folder.Path, "data");
        var rows = new StoredRows(data);
        await Patience.Until(() => rows.Readings().Count(r => r.StartsWith("furnace-1/", StringComparison.Ordinal) && !r.StartsWith("furnace-1/crown", StringComparison.Ordinal)) > 100, "the strange sensor's readings are stored");
        isEnough = true;
        await Patience.For(publishing);
        await Patience.Until(() => Of(rows, "furnace-1/crown").Count == sent, () => $"all {sent} readings of the crown are stored; there are {Of(rows, "furnace-1/crown").Count}");

        // Every reading of the crown once, through two new beginnings; the strange sensor's from the first one it was listened to, without a gap.
        Assert.Equal(Enumerable.Range(0, sent).Select(i => Micros(start, i)), Of(rows, "furnace-1/crown"));
        var added = AddedChannels.Read(data);
        Assert.Equal([Strange, Bundle], added.Select(a => a.Channel.Topic));
        Assert.Equal("/at", added[1].Channel.TimePointer);
        var strange = Of(rows, $"furnace-1/{added[0].Channel.Id}");
        Assert.Equal(Enumerable.Range(sent - strange.Count, strange.Count).Select(i => Micros(start, i)), strange);
        output.WriteLine($"crown {sent} readings, strange sensor the last {strange.Count}; sent again after the new beginnings without a loss");
        Assert.Equal(0, rows.Conflicts());
        // Each strange topic was told once.
        Assert.Equal(3, rows.Refused());

        // And out again.
        visit.IsExpected = true;
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = $"Take out annealer-1/{added[1].Channel.Id}" }).ClickAsync();
        await visit.Until("topic => ![...document.querySelectorAll('.wire code')].some(c => c.textContent === topic) && document.querySelectorAll('.wire').length === 3", Bundle);
        Assert.Equal(Strange, Assert.Single(AddedChannels.Read(data)).Channel.Topic);
        Assert.Equal(0, await service.Stop());
        Assert.Empty(ServiceLog.Errors(data));
    }

    static string Micros(DateTimeOffset start, int i) => (DateTimeOffset.FromUnixTimeMilliseconds(start.AddMilliseconds(100 * i).ToUnixTimeMilliseconds()).ToUnixTimeMilliseconds() * 1000).ToString(CultureInfo.InvariantCulture);

    static List<string> Of(StoredRows rows, string channel) => [.. rows.Readings().Select(r => r.Split(' ')).Where(r => r[0] == channel).Select(r => r[1])];

    async Task<Visit> SignIn(ServiceProcess service, string address)
    {
        var visit = await chromium.Open($"{address}/first-run", Screen.Desk);
        await visit.Page.FillAsync("#code", SetUpCode().Match(service.Said).Groups[1].Value);
        await visit.Page.FillAsync("#password", "glass is slow");
        await visit.Page.FillAsync("#again", "glass is slow");
        await visit.Page.ClickAsync("button.main");
        await visit.Page.WaitForURLAsync($"{address}/");
        await visit.Page.GotoAsync($"{address}/setup", new() { WaitUntil = WaitUntilState.DOMContentLoaded });
        await visit.Ready();
        return visit;
    }

    /// <summary>Pictures to look at, where somebody names a folder for them.</summary>
    static async Task Picture(Visit visit, string name)
    {
        if (Environment.GetEnvironmentVariable("HOTSHOP_WIRING_PICTURES") is not { Length: > 0 } folder) return;
        foreach (var (screen, scheme) in new[] { (Screen.Desk, ColorScheme.Light), (Screen.Phone, ColorScheme.Light), (Screen.Desk, ColorScheme.Dark), (Screen.Phone, ColorScheme.Dark) })
        {
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await visit.Page.SetViewportSizeAsync(screen.Width, screen.Height);
            await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{screen.Name}-{scheme}.png"), FullPage = true });
        }
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await visit.Page.SetViewportSizeAsync(Screen.Desk.Width, Screen.Desk.Height);
    }
}
