using System.Net;
using System.Net.Http.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Web.Access;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.Monitor.Tests.Access;

public sealed class AccessTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_stranger_is_asked_to_sign_in_and_a_program_gets_401()
    {
        await using var door = await TestDoor.Open();
        using var owner = await door.Owner();
        using var stranger = door.Browser();
        using var page = await stranger.GetAsync("/", Stop);
        Assert.Equal((HttpStatusCode.Redirect, "/signin"), (page.StatusCode, page.Headers.Location!.AbsolutePath));
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/api/appliances", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/api/nothing-here", Stop)).StatusCode);
    }

    [Fact]
    public async Task At_the_first_start_the_printed_code_lets_the_owner_choose_a_password_once()
    {
        await using var door = await TestDoor.Open();
        using var browser = door.Browser();
        Assert.Equal("/first-run", (await browser.GetAsync("/", Stop)).Headers.Location!.OriginalString);
        var code = door.SetUpCode;
        Assert.Equal("/first-run?problem=short", await Location(browser, "/first-run", ("code", code), ("password", "short"), ("passwordAgain", "short")));
        Assert.Equal("/first-run?problem=different", await Location(browser, "/first-run", ("code", code), ("password", "glass is slow"), ("passwordAgain", "glass is slim")));
        Assert.Equal("/first-run?problem=code", await Location(browser, "/first-run", ("code", "AAAA-AAAA"), ("password", "glass is slow"), ("passwordAgain", "glass is slow")));
        Assert.Equal("/", await Location(browser, "/first-run", ("code", code.ToLowerInvariant()), ("password", "glass is slow"), ("passwordAgain", "glass is slow")));
        Assert.Equal("floor", await browser.GetStringAsync("/", Stop));
        using var second = door.Browser();
        Assert.Equal("/signin", await Location(second, "/first-run", ("code", code), ("password", "another one!"), ("passwordAgain", "another one!")));
    }

    [Fact]
    public async Task A_set_up_code_guessed_wrong_five_times_is_void_and_a_new_one_is_printed()
    {
        await using var door = await TestDoor.Open();
        using var browser = door.Browser();
        var first = door.SetUpCode;
        for (var i = 0; i < 5; i++) await Location(browser, "/first-run", ("code", "AAAA-AAAA"), ("password", "glass is slow"), ("passwordAgain", "glass is slow"));
        Assert.NotEqual(first, door.SetUpCode);
        Assert.Equal("/first-run?problem=code", await Location(browser, "/first-run", ("code", first), ("password", "glass is slow"), ("passwordAgain", "glass is slow")));
    }

    [Fact]
    public async Task The_owner_signs_in_with_the_password_and_is_led_back_to_the_page_asked_for()
    {
        await using var door = await TestDoor.Open();
        using var _ = await door.Owner();
        using var browser = door.Browser();
        Assert.StartsWith("/signin?problem=password", await Location(browser, "/signin", ("password", "wrong")), StringComparison.Ordinal);
        Assert.Equal("/pot?id=1", await Location(browser, "/signin", ("password", "glass is slow"), ("returnUrl", "/pot?id=1")));
        Assert.Equal("1", await browser.GetStringAsync("/api/money", Stop));
        Assert.Equal("/signin", await Location(browser, "/signout"));
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.GetAsync("/api/money", Stop)).StatusCode);
    }

    [Theory, InlineData("https://evil.example"), InlineData("//evil.example"), InlineData("/\\evil.example"), InlineData("/\n/evil.example"), InlineData("javascript:1"), InlineData(null)]
    public void Signing_in_never_leads_to_somebody_elses_page(string? address) => Assert.Equal("/", AccessEndpoints.Local(address));

    [Fact]
    public async Task A_paired_screen_views_and_logs_but_sees_no_money()
    {
        await using var door = await TestDoor.Open();
        using var owner = await door.Owner();
        using var screen = await door.Screen(owner);
        Assert.Equal("[]", await screen.GetStringAsync("/api/appliances", Stop));
        Assert.Equal(HttpStatusCode.OK, (await screen.PostAsync("/api/logbook", null, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await screen.GetAsync("/api/money", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await screen.PostAsync("/api/screens/pairing", null, Stop)).StatusCode);
        Assert.Equal(new Visitor("Screen", "Wall"), await screen.GetFromJsonAsync<Visitor>("/api/visitor", Stop));
    }

    [Fact]
    public async Task A_screen_that_the_owner_removes_is_out_at_its_next_call()
    {
        await using var door = await TestDoor.Open();
        using var owner = await door.Owner();
        using var screen = await door.Screen(owner);
        var paired = (await owner.GetFromJsonAsync<List<PairedScreen>>("/api/screens", Stop))!.Single();
        Assert.Equal(HttpStatusCode.NoContent, (await owner.DeleteAsync($"/api/screens/{paired.Id}", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await screen.GetAsync("/api/appliances", Stop)).StatusCode);
    }

    [Fact]
    public async Task A_pairing_code_works_once()
    {
        await using var door = await TestDoor.Open();
        using var owner = await door.Owner();
        using var made = await owner.PostAsync("/api/screens/pairing", null, Stop);
        var code = (await made.Content.ReadFromJsonAsync<PairingCode>(Stop))!.Code;
        using var first = door.Browser();
        using var second = door.Browser();
        Assert.Equal("/", await Location(first, "/pair", ("code", code), ("name", "Wall")));
        Assert.Equal("/pair?problem=code", await Location(second, "/pair", ("code", code), ("name", "Phone")));
    }

    [Fact]
    public async Task Screens_and_owner_stay_signed_in_over_a_restart()
    {
        var door = await TestDoor.Open();
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new() };
        using var owner = new HttpClient(handler);
        owner.BaseAddress = door.Address;
        Assert.Equal("/", await Location(owner, "/first-run", ("code", door.SetUpCode), ("password", "glass is slow"), ("passwordAgain", "glass is slow")));
        await door.Close();
        await using var after = await TestDoor.Open(folder: door.Folder);
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(after.Address, "/api/money"));
        Assert.Equal(HttpStatusCode.OK, (await owner.SendAsync(request, Stop)).StatusCode);   // cookies know no port
    }

    [Fact]
    public async Task A_form_without_its_antiforgery_field_signs_nobody_in()
    {
        await using var door = await TestDoor.Open();
        using var _ = await door.Owner();
        using var browser = door.Browser();
        using var form = new FormUrlEncodedContent([new("password", "glass is slow")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostAsync("/signin", form, Stop)).StatusCode);
    }

    [Fact]
    public async Task Ten_wrong_passwords_a_minute_are_enough()
    {
        await using var door = await TestDoor.Open();
        using var _ = await door.Owner();   // one attempt of the ten
        using var browser = door.Browser();
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 11; i++) answers.Add((await browser.PostAsync("/signin", null, Stop)).StatusCode);
        Assert.DoesNotContain(HttpStatusCode.TooManyRequests, answers[..9]);
        Assert.Equal(HttpStatusCode.TooManyRequests, answers[^1]);
    }

    [Fact]
    public async Task A_web_page_in_the_owners_browser_cannot_post_to_the_demo_on_localhost()
    {
        await using var door = await TestDoor.Open(isOpen: true);
        using var browser = door.Browser();
        Assert.Equal("floor", await browser.GetStringAsync("/", Stop));
        foreach (var (header, value) in new[] { ("Origin", "https://evil.example"), ("Origin", "null"), ("Sec-Fetch-Site", "cross-site"), ("Sec-Fetch-Site", "same-site"), ("Referer", "https://evil.example/") })
        {
            using var attack = new HttpRequestMessage(HttpMethod.Post, "/api/logbook");
            attack.Headers.Add(header, value);
            Assert.Equal(HttpStatusCode.Forbidden, (await browser.SendAsync(attack, Stop)).StatusCode);
        }
        Assert.Equal(0, door.Changes);
        using var own = new HttpRequestMessage(HttpMethod.Post, "/api/logbook");
        own.Headers.Add("Origin", door.Address.GetLeftPart(UriPartial.Authority));
        Assert.Equal((HttpStatusCode.OK, 1), ((await browser.SendAsync(own, Stop)).StatusCode, door.Changes));
    }

    [Fact]
    public async Task A_name_that_was_rebound_to_this_computer_gets_nothing()
    {
        await using var door = await TestDoor.Open(isOpen: true);
        using var browser = door.Browser();
        using var attack = new HttpRequestMessage(HttpMethod.Get, "/api/appliances");
        attack.Headers.Host = "rebound.evil.example";
        using var answer = await browser.SendAsync(attack, Stop);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        Assert.Contains("http.allowedHosts", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_opened_by_a_link_needs_no_sign_in()
    {
        await using var door = await TestDoor.Open();
        using var phone = door.Browser();
        Assert.Equal(HttpStatusCode.OK, (await phone.PostAsync("/night/furnace-1?t=x", null, Stop)).StatusCode);
    }

    [Fact]
    public async Task A_collector_on_this_computer_reads_the_metrics_and_nobody_does_through_a_proxy()
    {
        await using var door = await TestDoor.Open();
        using var collector = door.Browser();
        Assert.Equal("up 1", await collector.GetStringAsync("/metrics", Stop));
        foreach (var header in new[] { "X-Forwarded-For", "Forwarded" })
        {
            using var proxied = new HttpRequestMessage(HttpMethod.Get, "/metrics");
            proxied.Headers.Add(header, "for=203.0.113.7");
            Assert.Equal(HttpStatusCode.Redirect, (await collector.SendAsync(proxied, Stop)).StatusCode);
        }
    }

    [Fact]
    public async Task Every_answer_tells_the_browser_what_not_to_do_refusals_too()
    {
        await using var door = await TestDoor.Open();
        using var browser = door.Browser();
        foreach (var (path, referrer) in new[] { ("/", "same-origin"), ("/api/appliances", "same-origin"), ("/night/x", "no-referrer") })
        {
            using var answer = await browser.GetAsync(path, Stop);
            Assert.StartsWith("default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal(referrer, answer.Headers.GetValues("Referrer-Policy").Single());
        }
    }

    [Fact]
    public void The_demo_without_sign_in_refuses_to_listen_beyond_this_computer()
    {
        var refusal = Assert.Throws<ArgumentException>(() => new ServiceCollection().AddAccess(new("unused", new HttpOptions { Listen = "0.0.0.0:5080" }, IsOpen: true), new FakeTimeProvider()));
        Assert.Contains("this computer alone", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_access_file_stops_the_start_instead_of_opening_the_door()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-access-").FullName;
        File.WriteAllText(Path.Combine(folder, "access.json"), "{\"ownerPass");
        Assert.Throws<InvalidDataException>(() => new AccessFile(folder));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_password_itself_is_written_nowhere()
    {
        await using var door = await TestDoor.Open();
        using var _ = await door.Owner("glass is slow");
        foreach (var file in Directory.GetFiles(door.Folder, "*", SearchOption.AllDirectories))
            Assert.DoesNotContain("glass is slow", await File.ReadAllTextAsync(file, Stop), StringComparison.Ordinal);
        Assert.DoesNotContain(door.Log.Lines, l => l.Contains("glass is slow", StringComparison.Ordinal));
    }

    static async Task<string> Location(HttpClient browser, string path, params (string, string)[] fields)
    {
        using var answer = await TestDoor.Post(browser, path, fields);
        return answer.Headers.Location?.OriginalString ?? answer.StatusCode.ToString();
    }
}
