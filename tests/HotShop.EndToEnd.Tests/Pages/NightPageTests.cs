using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Phone;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Notifications;
using Microsoft.Playwright;
using NodaTime;
using NodaTime.Extensions;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary><c>hotshop run</c> with sensors on its broker: a flame goes out, and the phone's link is opened in a browser that has never signed in.</summary>
[Collection("pages")]
public sealed partial class NightPageTests(Chromium chromium)
{
    [Fact]
    public async Task Whoever_is_woken_takes_the_alarm_by_the_link_without_sign_in_or_script_and_the_owner_sees_it()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-night-").FullName;
        try
        {
            await using var phone = await HttpReceiver.Start();
            var studio = NightPlan.Configuration(folder, phone.Address, mailPort: Ports.Free());
            studio = studio with { Notifications = studio.Notifications with { Mail = null }, People = [.. studio.People.Select(p => p with { Phone = "555 0101", Outlets = [p.Outlets[0]] })] };
            var file = Path.Combine(folder, "hotshop.json");
            await File.WriteAllTextAsync(file, JsonSerializer.Serialize(studio, ConfigurationFile.Json), TestContext.Current.CancellationToken);
            await using (var service = await ServiceProcess.Start(file))
            {
                await Patience.Until(() => service.Said.Contains("The broker listens", StringComparison.Ordinal), () => $"the broker listens; it says\n{service.Said}");
                await FlameGoesOut(studio);
                var link = (string)(await Patience.For(phone.Received.ReadAsync(TestContext.Current.CancellationToken).AsTask())).Body!["click"]!;
                await LooksRight(link);
                await Take(link);
                await OwnerSeesWhoHasIt($"http://{studio.Http.Listen}", SetUpCode().Match(service.Said).Groups[1].Value);
                Assert.Equal(0, await service.Stop());
            }
            Assert.Empty(ServiceLog.Errors(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>An hour and a half of a calm furnace, then the flame is gone with the gas on and the crown falls.</summary>
    static async Task FlameGoesOut(StudioConfiguration studio)
    {
        await using var sensors = await Sensors.Connect(studio);
        var now = new RealClock().GetUtcNow().ToInstant();
        await sensors.Backlog("furnace-1/crown", Enumerable.Range(0, 86).Select(m => (now - Duration.FromMinutes(89 - m), 1150 + 4 * Math.Sin(m / 7.0) - Math.Max(0, m - 80) * 1.4)));
        foreach (var seconds in new[] { 160, 100, 40, 0 })
        {
            sensors["furnace-1/flame"] = 0;
            sensors["furnace-1/crown"] = 1138 - (160 - seconds) / 10.0;
            await sensors.Measure(now - Duration.FromSeconds(seconds));
        }
    }

    async Task LooksRight(string link)
    {
        foreach (var screen in new[] { Screen.Narrow, Screen.Phone, Screen.Desk })
        {
            await using var visit = await chromium.Open(link, screen, ColorScheme.Dark);
            Assert.Contains("Furnace 1", await visit.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
            Assert.Empty(EveryPageTests.Serious(await visit.Page.RunAxe()));
            Assert.False(await visit.ScrollsSideways());
            Assert.InRange((await visit.Weights()).Sum(p => p.Bytes), 1, 300_000);
            if (screen == Screen.Phone) await PicturesTests.Keep(visit, "night-phone");
            visit.HasNoFaults();
        }
    }

    async Task Take(string link)
    {
        await using var visit = await chromium.Open(link, Screen.Phone, hasScript: false);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "I have it" }).ClickAsync();
        await visit.Page.Locator(".held", new() { HasText = "You have it" }).WaitForAsync();
        visit.HasNoFaults();
    }

    async Task OwnerSeesWhoHasIt(string address, string code)
    {
        await using var visit = await chromium.Open(address + "/first-run", Screen.Desk);
        await visit.Page.Locator("#code").FillAsync(code);
        await visit.Page.Locator("#password").FillAsync("a long enough password");
        await visit.Page.Locator("#again").FillAsync("a long enough password");
        await visit.Page.Locator("button.main").ClickAsync();
        await visit.Page.GotoAsync(address + "/");
        await visit.Ready();
        var alarms = await (await visit.Page.APIRequest.GetAsync(address + "/api/alarms")).JsonAsync();
        var flame = alarms!.Value.EnumerateArray().Single(a => a.GetProperty("kind").GetString() == "flame-failure");
        Assert.Equal(("acknowledged", "night phone 1"), (flame.GetProperty("state").GetString(), flame.GetProperty("who").GetString()));
        visit.HasNoFaults();
    }

    [GeneratedRegex("set-up code ([0-9A-Z]{4}-[0-9A-Z]{4})")]
    private static partial Regex SetUpCode();
}
