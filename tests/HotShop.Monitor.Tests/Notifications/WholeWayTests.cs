using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Web;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>From an alarm to a push server and a mail server, over the real store.</summary>
public sealed class WholeWayTests(ITestOutputHelper output) : IAsyncLifetime
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-house-").FullName;
    readonly MailReceiver mail = new();
    HttpReceiver push = null!;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => push = await HttpReceiver.Start();

    public async ValueTask DisposeAsync()
    {
        await push.DisposeAsync();
        await mail.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task An_alarm_reaches_push_and_mail_once_again_after_the_repeat_time_then_the_next_person_and_says_when_it_ends()
    {
        await using var house = await Open();
        var id = await house.Overheat();
        Assert.Equal(("ana #1", "#1"), (await Pushed(), await Mailed()));
        await house.Pass(5);
        Assert.Equal(("ana #2", "#2"), (await Pushed(), await Mailed()));
        await house.Pass(5);
        Assert.Equal(("ana #3, ben #3", "#3"), (await PushedToBoth(), await Mailed()));
        await house.Alarms.Take(id, "Ben");
        Assert.Equal(("ana #4", "#4"), (await Pushed(), await Mailed()));   // "Ben has it" lets Ana sleep
        await house.Alarms.Clear(id);
        Assert.Equal(("ana #5, ben #5", "#5"), (await PushedToBoth(), await Mailed()));
        await house.Pass(60);
        await NothingElseCame(house);
    }

    [Fact]
    public async Task Killed_between_commit_and_send_push_and_mail_still_come_after_the_start()
    {
        await using (var dying = await Open(isSending: false)) await dying.Overheat();
        await using var house = await Open();
        Assert.Equal(("ana #1", "#1"), (await Pushed(), await Mailed()));
    }

    [Fact]
    public async Task A_mail_server_that_hangs_does_not_delay_the_push()
    {
        mail.Until = new TaskCompletionSource().Task;
        await using var house = await Open();
        var waits = new List<double>();
        for (var i = 0; i < 100; i++)
        {
            var watch = Stopwatch.StartNew();
            await house.Overheat($"alarm-{i}");
            await Pushed();
            waits.Add(watch.Elapsed.TotalMilliseconds);
        }
        waits.Sort();
        output.WriteLine($"from raised to received by push, 100 alarms, mail server hanging: median {waits[50]:0.0} ms, 99th {waits[98]:0.0} ms, worst {waits[99]:0.0} ms");
        Assert.True(waits[50] < 250, $"median {waits[50]:0} ms");
    }

    [Fact]
    public async Task A_tap_on_the_link_that_came_by_push_stops_the_calls()
    {
        await using var house = await Open();
        var id = await house.Overheat();
        var token = Token((await push.Received.ReadAsync(Stop)).Body!["click"]!.ToString());
        Assert.Equal("#1", await Mailed());
        Assert.Equal(NightOutcome.Taken, (await house.Night.Take(id, token, Stop)).Outcome);
        await house.Pass(30);
        await NothingElseCame(house);
        Assert.DoesNotContain(house.Log.Lines, l => l.Contains(token, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_test_call_proves_a_way_only_when_the_button_is_tapped()
    {
        await using var house = await Open();
        Assert.DoesNotContain(await Outlets(house), o => o.IsProven || o.LastSentAt is not null);
        using var started = await house.Browser.PostAsJsonAsync("/api/outlets/test", new { person = "ana", outlet = "push" }, Stop);
        Assert.Equal(HttpStatusCode.Accepted, started.StatusCode);
        var link = new Uri((await push.Received.ReadAsync(Stop)).Body!["click"]!.ToString()).PathAndQuery;
        Assert.StartsWith("/receipt/test-", link, StringComparison.Ordinal);

        Assert.Contains("It reached me", await house.Browser.GetStringAsync(link, Stop), StringComparison.Ordinal);
        Assert.DoesNotContain(await Outlets(house), o => o.IsProven);
        using var tapped = await house.Browser.PostAsync(link, null, Stop);
        Assert.Contains("Noted", await tapped.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(("ana", "push"), (await Outlets(house)).Where(o => o.IsProven).Select(o => (o.Person, o.Outlet)).Single());

        house.Time.Advance(TimeSpan.FromDays(8));
        Assert.DoesNotContain(await Outlets(house), o => o.IsProven);
        Assert.Contains("does not work", await house.Browser.GetStringAsync(link, Stop), StringComparison.Ordinal);   // seven days
        Assert.DoesNotContain(house.Log.Lines, l => l.Contains(Token("http://x" + link), StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_forged_receipt_link_proves_nothing()
    {
        await using var house = await Open();
        using var tapped = await house.Browser.PostAsync("/receipt/test-1?t=AAAA.BBBB", null, Stop);
        Assert.Contains("does not work", await tapped.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.DoesNotContain(await Outlets(house), o => o.LastReceiptAt is not null);
    }

    [Fact]
    public async Task A_test_call_to_nobody_says_what_there_is()
    {
        await using var house = await Open();
        using var answer = await house.Browser.PostAsJsonAsync("/api/outlets/test", new { person = "zoe", outlet = "push" }, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("'zoe'", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    Task<TestHouse> Open(bool isSending = true) => TestHouse.Open(folder,
        [
            TestNight.Person("ana", new OutletOptions { Kind = "push", Url = push.Address.ToString(), Topic = "ana" }, new() { Kind = "mail", Address = "ana@quillmere.example" }),
            TestNight.Person("ben", new OutletOptions { Kind = "push", Url = push.Address.ToString(), Topic = "ben" }),
        ],
        new() { Mail = new() { Host = "127.0.0.1", Port = mail.Port, Security = "none", From = "night@quillmere.example" } }, isSending);

    async Task<string> Pushed()
    {
        var body = (await push.Received.ReadAsync(Stop)).Body!;
        return $"{body["topic"]} #{body["sequence"]}";
    }

    async Task<string> PushedToBoth() => string.Join(", ", new[] { await Pushed(), await Pushed() }.Order());

    /// <summary>Each way keeps the order: when a test call is the next to arrive, nothing was sent before it.</summary>
    async Task NothingElseCame(TestHouse house)
    {
        foreach (var outlet in new[] { "push", "mail" })
            (await house.Browser.PostAsJsonAsync("/api/outlets/test", new { person = "ana", outlet }, Stop)).EnsureSuccessStatusCode();
        Assert.StartsWith("Test call", (await push.Received.ReadAsync(Stop)).Body!["title"]!.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("Test call", (await mail.Received.ReadAsync(Stop)).Subject, StringComparison.Ordinal);
    }

    async Task<string> Mailed() => (await mail.Received.ReadAsync(Stop)).TextBody!.Split(' ')[0];

    static async Task<List<OutletStatus>> Outlets(TestHouse house) => (await house.Browser.GetFromJsonAsync<List<OutletStatus>>("/api/outlets", Stop))!;

    static string Token(string link) => HttpUtility.ParseQueryString(new Uri(link).Query)["t"]!;
}
