using System.Net.Http.Json;
using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>The pot's log in the hands of the people at the bench.</summary>
[Collection("pages")]
public sealed class PotLogTests(Chromium chromium, ShownStudio studio)
{
    const string Queue = "JSON.parse(localStorage.getItem('hotshop.entries') ?? '[]')";

    async Task<DateTimeOffset> Now() => (await studio.Ask("/api/studio")).GetProperty("now").GetDateTimeOffset();

    async Task Post(object entry) =>
        (await studio.Http.PostAsJsonAsync($"{studio.Address}/api/logbook", entry, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();

    async Task<JsonElement?> Holding(string id) => (await studio.Ask("/api/logbook?appliance=furnace-1&corrected=true")).EnumerateArray()
        .Where(e => e.GetProperty("id").GetString() == id).Cast<JsonElement?>().FirstOrDefault();

    async Task<Visit> Pot(string query = "")
    {
        var visit = await chromium.Open($"{studio.Address}/pot{query}", Screen.Phone);
        await visit.Ready();
        return visit;
    }

    static async Task<JsonElement> Logged(Visit visit, Func<Task> act)
    {
        var answer = await visit.Page.RunAndWaitForResponseAsync(act, r => r.Url.EndsWith("/api/logbook", StringComparison.Ordinal) && r.Request.Method == "POST");
        var body = (await answer.JsonAsync())!.Value;
        Assert.True(answer.Status == 201, $"{answer.Status}: {body}");
        return body;
    }

    [Fact]
    public async Task One_tap_proposes_the_count_of_the_same_weekday_and_it_is_sent_as_a_tally_after_a_change()
    {
        var day = await Now() - TimeSpan.FromDays(7);
        await Post(new { appliance = "furnace-1", entry = "tally", gathers = new { small = 12, large = 4 }, time = day, from = day - TimeSpan.FromMinutes(10), to = day });
        await using var visit = await Pot();
        await visit.Page.Locator("[data-sheet=tally]").ClickAsync();
        await visit.Page.Locator(".likes button", new() { HasText = "12 small" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "One large more" }).ClickAsync();
        var tally = await Logged(visit, () => visit.Page.Locator("#log-tally").ClickAsync());
        var gathers = tally.TryGetProperty("gathers", out var sent) ? sent : default;
        Assert.Equal(("12", "5", "0"), (gathers.GetProperty("small").ToString(), gathers.GetProperty("large").ToString(), gathers.GetProperty("medium").ToString()));
        Assert.True(tally.GetProperty("from").GetDateTimeOffset() < tally.GetProperty("to").GetDateTimeOffset());
        visit.HasNoFaults();
    }

    [Fact]
    public async Task A_chip_signs_what_is_logged_until_it_is_pressed_again()
    {
        await using var visit = await Pot();
        await visit.Page.Locator("[data-sheet=more]").Last.ClickAsync();
        await visit.Page.Locator("#who").FillAsync("Ada");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Back" }).ClickAsync();
        Assert.Equal("Ada", (await Logged(visit, () => visit.Page.Locator("button.gather[data-size=small]").ClickAsync())).GetProperty("who").GetString());
        await visit.Page.Locator("#bench [data-who=Ada]").ClickAsync();
        Assert.Equal(JsonValueKind.Null, (await Logged(visit, () => visit.Page.Locator("button.gather[data-size=small]").ClickAsync())).GetProperty("who").ValueKind);
        visit.HasNoFaults();
    }

    [Fact]
    public async Task An_entry_is_opened_from_the_floor_corrected_with_a_reason_and_later_struck_out()
    {
        var id = $"to-correct-{Guid.NewGuid():N}";
        await Post(new { appliance = "furnace-1", entry = "gather", id, size = "large", count = 2, who = "Mo", time = await Now() - TimeSpan.FromMinutes(20) });
        await using var visit = await Pot($"?entry={id}");
        Assert.Contains("Mo, ", await visit.Page.Locator("#sheet").InnerTextAsync(), StringComparison.Ordinal);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "One gathers more" }).ClickAsync();
        await visit.Page.Locator("#reason").FillAsync("<b>miscounted</b>");
        await Logged(visit, () => visit.Page.Locator("#correct").ClickAsync());
        var holds = (await Holding(id))!.Value;
        Assert.Equal(3, holds.GetProperty("count").GetInt32());
        Assert.Equal("<b>miscounted</b>", holds.GetProperty("corrections")[0].GetProperty("text").GetString());
        // Shown as text, whatever it looks like.
        await visit.Page.Locator($"#entry-{id}", new() { HasText = "corrected: <b>miscounted</b>" }).WaitForAsync();

        await visit.Page.Locator($"#entry-{id} button").ClickAsync();
        await Logged(visit, () => visit.Page.Locator("#strike").ClickAsync());
        Assert.Null(await Holding(id));
        visit.HasNoFaults();
    }

    [Fact]
    public async Task A_dip_in_inches_from_the_rim_and_a_charge_with_the_bags_yield_are_sent_as_they_were_typed()
    {
        await using var visit = await Pot();
        await visit.Page.Locator("[data-sheet=dip]").ClickAsync();
        await visit.Page.GetByText("rim to glass").ClickAsync();
        await visit.Page.Locator("#sheet .unit").ClickAsync();
        await visit.Page.Locator("#sheet input[type=number]").FillAsync("5.5");
        var dip = await Logged(visit, () => visit.Page.Locator("#sheet button[type=submit]").ClickAsync());
        Assert.Equal((5.5, "[in_i]"), (dip.GetProperty("rimToGlass").GetDouble(), dip.GetProperty("unit").GetString()));

        await visit.Page.Locator("[data-sheet=charge]").ClickAsync();
        await visit.Page.Locator("label[for=material-batch]").ClickAsync();
        await visit.Page.Locator("#sheet summary").ClickAsync();
        await visit.Page.Locator("#yield").FillAsync("82");
        await visit.Page.Locator("#yield").BlurAsync();
        var charge = await Logged(visit, () => visit.Page.Locator("#sheet .offers button").First.ClickAsync());
        Assert.Equal(("batch", 0.82), (charge.GetProperty("material").GetString(), charge.GetProperty("yield").GetDouble()));
        visit.HasNoFaults();
    }

    [Fact]
    public async Task The_same_entry_from_two_phones_is_one_entry()
    {
        await using var one = await Pot();
        await using var two = await Pot();
        one.IsExpected = two.IsExpected = true;
        await one.Context.SetOfflineAsync(true);
        await one.Page.Locator("button.gather[data-size=large]").ClickAsync();
        var queue = await one.Page.EvaluateAsync<string>("localStorage.getItem('hotshop.entries')");
        var id = await one.Page.EvaluateAsync<string>($"{Queue}[0].entry.id");
        await two.Page.EvaluateAsync("queue => localStorage.setItem('hotshop.entries', queue)", queue);
        await one.Context.SetOfflineAsync(false);
        foreach (var phone in new[] { one, two }) await phone.Until($"() => {Queue}.length === 0");
        Assert.Single((await studio.Ask("/api/logbook?appliance=furnace-1")).EnumerateArray(), e => e.GetProperty("id").GetString() == id);
    }

    [Fact]
    public async Task A_refused_entry_stays_with_its_reason_and_does_not_hold_up_the_others()
    {
        await using var visit = await Pot();
        visit.IsExpected = true;
        // By the studio's clock: by the browser's it would be refused for being in the future, at some hours of the day.
        await visit.Page.EvaluateAsync("fetch('/api/studio').then(a => a.json()).then(studio => localStorage.setItem('hotshop.entries', JSON.stringify([{ entry: { id: 'too-big', time: studio.now, appliance: 'furnace-1', entry: 'gather', size: 'huge' } }])))");
        var gather = await visit.Page.RunAndWaitForResponseAsync(() => visit.Page.Locator("button.gather[data-size=medium]").ClickAsync(), r => r.Status == 201);
        Assert.Equal("medium", (await gather.JsonAsync())!.Value.GetProperty("size").GetString());
        await visit.Page.Locator("#entry-too-big", new() { HasText = "refused: log entry gather of furnace-1: 'huge' is no size of gather here" }).WaitForAsync();
        await visit.Page.GetByText("1 was refused; the log below says why.").WaitForAsync();
        await visit.Page.Locator("#entry-too-big button").ClickAsync();
        await visit.Until($"() => {Queue}.length === 0");
    }

    [Fact]
    public async Task When_the_sign_in_has_run_out_entries_wait_the_page_says_so_and_nothing_leads_away_from_it()
    {
        await using var visit = await Pot();
        visit.IsExpected = true;
        await visit.Page.RouteAsync("**/api/logbook", route => route.Request.Method == "POST" ? route.FulfillAsync(new() { Status = 401, ContentType = "application/problem+json", Body = "{}" }) : route.FallbackAsync());
        await visit.Page.Locator("button.gather[data-size=medium]").ClickAsync();
        await visit.Page.GetByText("One entry waits on this device: you are signed out. Sign in, and they are sent.").WaitForAsync();
        Assert.Equal("/pot", new Uri(visit.Page.Url).AbsolutePath);
        Assert.Equal("/signin?returnUrl=%2Fpot", await visit.Page.Locator("#kept a").GetAttributeAsync("href"));
        await visit.Page.UnrouteAllAsync();
        await visit.Until($"() => {Queue}.length === 0");
    }

    [Theory, InlineData("week"), InlineData("month")]
    public async Task The_strip_reaches_back_a_week_and_four(string range)
    {
        await using var visit = await Pot();
        await visit.Page.Locator($"[data-range={range}]").ClickAsync();
        await visit.Until("range => document.querySelector(`[data-range=${range}]`).getAttribute('aria-pressed') === 'true' && document.querySelectorAll('#pot-strip .hair').length > 4", range);
        Assert.False(await visit.ScrollsSideways());
        visit.HasNoFaults();
    }

    [Fact]
    public async Task The_glass_that_the_pot_is_reckoned_with_opens_with_its_points_and_its_source()
    {
        await using var visit = await chromium.Open($"{studio.Address}/pot", Screen.Narrow);
        await visit.Ready();
        await visit.Page.Locator("#glass summary").ClickAsync();
        var table = await visit.Page.Locator("#glass-rows").InnerTextAsync();
        Assert.Contains("soft studio soda-lime", table, StringComparison.Ordinal);
        Assert.Contains("495 °C, 923 °F", table, StringComparison.Ordinal);
        Assert.Contains("2360 kg/m³", table, StringComparison.Ordinal);
        Assert.Contains("Fluegel 2007", table, StringComparison.Ordinal);
        Assert.False(await visit.ScrollsSideways());
        Assert.Empty(EveryPageTests.Serious(await visit.Page.RunAxe()));
        visit.HasNoFaults();
    }

    [Fact]
    public async Task On_a_phone_the_strip_is_not_hidden_behind_the_buttons()
    {
        await using var visit = await Pot();
        var (strip, buttons) = (await visit.Page.Locator("#pot-strip").BoundingBoxAsync(), await visit.Page.Locator("#acts").BoundingBoxAsync());
        Assert.True(strip!.Y + strip.Height <= buttons!.Y + 1, $"the strip ends at {strip.Y + strip.Height:F0}, the buttons begin at {buttons.Y:F0}");
    }
}
