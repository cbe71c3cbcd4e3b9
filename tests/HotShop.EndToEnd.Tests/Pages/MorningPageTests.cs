using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>The morning page in a browser: readable without scripts, down on a phone and across on a wall.</summary>
[Collection("pages")]
public sealed class MorningPageTests(Chromium chromium, ShownStudio studio)
{
    [Fact]
    public async Task It_reads_and_takes_over_without_scripts()
    {
        await using var visit = await chromium.Open(studio.Address + "/morning", Screen.Phone, hasScript: false);
        Assert.NotEqual("", await visit.Page.Locator("h1").InnerTextAsync());
        foreach (var title in new[] { "Troubles", "Lows and highs", "When the annealers are cool", "Glass", "Who has the phone tonight", "Worn and due" })
            Assert.True(await visit.Page.GetByRole(AriaRole.Heading, new() { Name = title, Exact = true }).IsVisibleAsync(), title);

        await visit.Page.Locator(".take input").FillAsync("Ana");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "I take over" }).ClickAsync();
        await visit.Page.GetByText("Ana took over at").WaitForAsync();
        Assert.False((await studio.Ask("/api/handover")).GetProperty("takenOver").ValueKind == System.Text.Json.JsonValueKind.Null);
        visit.HasNoFaults();
    }

    [Fact]
    public async Task The_strip_runs_down_a_phone_and_across_a_wall_and_its_table_says_the_same()
    {
        await studio.HasRun(TimeSpan.FromHours(14));   // past ten in the evening
        foreach (var (screen, shown, hidden) in new[] { (Screen.Phone, ".strip.down", ".strip.across"), (Screen.Wall, ".strip.across", ".strip.down") })
        {
            await using var visit = await chromium.Open(studio.Address + "/morning", screen);
            await visit.Ready();
            Assert.True(await visit.Page.Locator(shown).IsVisibleAsync());
            Assert.False(await visit.Page.Locator(hidden).IsVisibleAsync());
            Assert.False(await visit.ScrollsSideways());
            visit.HasNoFaults();
        }
    }

    [Fact]
    public async Task The_page_says_what_the_interface_says()
    {
        await using var visit = await chromium.Open(studio.Address + "/morning?day=2000-01-01", Screen.Desk, hasScript: false);
        // A morning of the past stands still: the words of both must be the same.
        var told = await studio.Ask("/api/handover?at=2000-01-01T11:00:00Z");
        Assert.Equal(told.GetProperty("headline").GetString(), await visit.Page.Locator("h1").InnerTextAsync());
        Assert.Equal("Nothing was measured in this night.", told.GetProperty("headline").GetString());
        Assert.True(await visit.Page.GetByText("No sensor was heard in this night").IsVisibleAsync());
        Assert.Equal(0, await visit.Page.GetByRole(AriaRole.Button, new() { Name = "I take over" }).CountAsync());
    }
}
