using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Pdf;
using HotShop.Monitor.Tests.Reports;
using HotShop.Monitor.Web.Access;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>The owner's page as a browser shows it: the account's own figures, on a desk and on a phone, by day and by night.</summary>
[Collection("pages")]
public sealed partial class MoneyTests(Chromium chromium, OwnersDesk desk) : IClassFixture<OwnersDesk>
{
    const string October = "/money?month=2026-10";

    Account Account => desk.Service.The<AccountBook>().Of(new LocalDate(2026, 10, 1), new LocalDate(2026, 10, 31), desk.Service.Now);

    StudioFormat Format => desk.Service.The<AccountBook>().Format;

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();

    /// <summary>Spaces of any kind and number are one: how a browser lays text out is not the question.</summary>
    static string Even(string text) => Blank().Replace(text, " ").Trim();

    [Theory, InlineData("/money?month=2026-10"), InlineData("/money?month=2026-09"), InlineData("/money?year=2026"), InlineData("/money?month=2026-02")]
    public async Task Axe_finds_nothing_serious_and_nothing_scrolls_sideways(string path)
    {
        List<string> found = [];
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            foreach (var screen in new[] { Screen.Desk, Screen.Narrow })
            {
                await using var visit = await chromium.Open(desk.Address + path, screen, scheme);
                foreach (var summary in await visit.Page.Locator("summary").AllAsync()) await summary.ClickAsync();
                found.AddRange(EveryPageTests.Serious(await visit.Page.RunAxe()).Select(v => $"{scheme} {screen.Name}: {v}"));
                if (await visit.ScrollsSideways()) found.Add($"{screen.Name} scrolls sideways");
                visit.HasNoFaults();
            }
        Assert.Empty(found);
    }

    [Fact]
    public async Task What_the_browser_shows_is_what_the_account_says()
    {
        var account = Account;
        await using var visit = await chromium.Open(desk.Address + October, Screen.Desk, hasScript: false);
        Assert.Equal(Even(new AccountStory(account, Format).Headline + "."), Even(await visit.Page.Locator("h1").InnerTextAsync()));
        await visit.Page.Locator("summary").First.ClickAsync();
        var rows = await visit.Page.Locator("table.figures").First.Locator("tbody tr").AllInnerTextsAsync();
        Assert.Equal(account.Days.Count, rows.Count);
        Assert.All(account.Days.Zip(rows), pair => Assert.Contains(Even($"{pair.First.Amount!.Text} {pair.First.EnergyKwh.Text}"), Even(pair.Second), StringComparison.Ordinal));
        Assert.Contains(Even($"Total {account.Cost!.Text}"), Even(await visit.Page.Locator("main").InnerTextAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_strip_lies_on_a_desk_and_stands_on_a_phone()
    {
        await using var wide = await chromium.Open(desk.Address + October, Screen.Desk);
        Assert.Equal((true, false), (await wide.Page.Locator("#across").IsVisibleAsync(), await wide.Page.Locator("#down").IsVisibleAsync()));
        await using var phone = await chromium.Open(desk.Address + October, Screen.Phone);
        Assert.Equal((false, true), (await phone.Page.Locator("#across").IsVisibleAsync(), await phone.Page.Locator("#down").IsVisibleAsync()));
        var shown = await phone.Page.Locator("#down text").AllTextContentsAsync();
        Assert.All(Account.Days, day => Assert.Contains(day.Amount!.Text, shown));
    }

    [Fact]
    public async Task An_owner_goes_to_September_types_its_bill_in_and_reads_the_verdict()
    {
        await using var visit = await chromium.Open(desk.Address + October, Screen.Phone);
        await visit.Page.GetByLabel("The month before, September").ClickAsync();
        await visit.Page.GetByText("Type in a bill").ClickAsync();
        await visit.Page.GetByLabel("Last day, on the bill").FillAsync("2026-09-30");
        await visit.Page.GetByLabel("What it counts").FillAsync("30.000,0");
        await visit.Page.GetByLabel("What it asks for").FillAsync("3.357,00");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this bill" }).ClickAsync();
        await visit.Page.GetByText("The bill is kept.").WaitForAsync();
        var bill = desk.Service.The<AccountBook>().Bills(new(2026, 9, 1), new(2026, 9, 30), desk.Service.Now).Single(b => b.EnergyKwh.Value == 30_000);
        Assert.Contains(Even(AccountStory.Sentence(bill.Words)), Even(await visit.Page.Locator("#bills").InnerTextAsync()), StringComparison.Ordinal);
        visit.HasNoFaults();
    }

    [Fact]
    public async Task A_paired_screen_is_told_that_the_page_is_the_owners()
    {
        await using var studio = await OwnersService.Start(first: null, isDemo: false);
        var (code, _) = studio.The<IServiceProvider>().GetRequiredKeyedService<OneTimeCode>(AccessSetup.Pairing).Issue();
        await using var visit = await chromium.Open(studio.Address + "/pair", Screen.Phone);
        await visit.Page.Locator("input[name=code]").FillAsync(code);
        await visit.Page.Locator("input[name=name]").FillAsync("Wall by the bench");
        await visit.Page.Locator("main form button").First.ClickAsync();
        await visit.Page.Locator("#studio-name").WaitForAsync();
        visit.IsExpected = true;   // 403
        await visit.Page.GotoAsync(studio.Address + "/money");
        Assert.Equal("Money is the owner's page", await visit.Page.Locator("h1").InnerTextAsync());
        Assert.Equal(0, await visit.Page.Locator("svg").CountAsync());
    }

    [Theory, InlineData("money", 1280, 900), InlineData("money-phone", 390, 844)]
    public async Task The_page_makes_a_picture_for_the_documents(string name, int width, int height)
    {
        await using var visit = await chromium.Open(desk.Address + October, new Screen(name, width, height));
        await PicturesTests.Keep(visit, name);
    }

    [Fact]
    public void The_printed_report_makes_its_pictures_for_the_documents()
    {
        var pages = new ReportPdf(Account, Format).Pictures(1.5f);
        for (var i = 0; i < pages.Count; i++) PicturesTests.Keep(pages[i], $"report-{i + 1}");
    }
}
