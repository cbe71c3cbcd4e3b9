using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>The sums in a browser: by keyboard, on a phone, without scripts.</summary>
[Collection("pages")]
public sealed class SumsPageTests(Chromium chromium, ShownStudio studio)
{
    [Fact]
    public async Task A_sum_is_worked_by_keyboard_and_its_address_keeps_the_numbers()
    {
        await using var visit = await chromium.Open(studio.Address + "/sums", Screen.Phone);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Weight of a piece or a gather" }).FocusAsync();
        await visit.Page.Keyboard.PressAsync("Enter");
        var diameter = visit.Page.GetByLabel("Diameter outside", new() { Exact = true });
        await diameter.FocusAsync();
        await visit.Page.Keyboard.PressAsync("Control+A");
        await visit.Page.Keyboard.TypeAsync("8");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.GetByText("It comes to").WaitForAsync();
        Assert.Contains("diameter=8", visit.Page.Url, StringComparison.Ordinal);
        var shown = await visit.Page.Locator(".first b").InnerTextAsync();
        await visit.Page.GotoAsync(visit.Page.Url);
        Assert.Equal(shown, await visit.Page.Locator(".first b").InnerTextAsync());
        Assert.False(await visit.ScrollsSideways());
        visit.HasNoFaults();
    }

    [Fact]
    public async Task A_wrong_number_is_told_beside_its_field_and_axe_finds_nothing()
    {
        await using var visit = await chromium.Open(studio.Address + "/sums/dip", Screen.Phone);
        visit.IsExpected = true;   // 400
        var reading = visit.Page.GetByLabel("Reading", new() { Exact = true });
        await reading.FillAsync("deep");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await visit.Page.GetByText("Not worked out").WaitForAsync();
        Assert.Equal(("deep", "true"), (await reading.InputValueAsync(), await reading.GetAttributeAsync("aria-invalid")));
        Assert.Contains("is no number", await visit.Page.Locator("#" + (await reading.GetAttributeAsync("aria-describedby"))!.Split(' ')[^1]).InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(EveryPageTests.Serious(await Deque.AxeCore.Playwright.PageExtensions.RunAxe(visit.Page)));
    }
}
