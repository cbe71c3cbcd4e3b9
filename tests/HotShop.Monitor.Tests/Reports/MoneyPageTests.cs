using System.Net;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Web.Pages;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The money page as it leaves the service: the account's own texts, whole without scripts.</summary>
[Collection("owner")]
public sealed class MoneyPageTests(OwnersOctober owner)
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    async Task<(HttpStatusCode Status, string Text)> Page(string query = "")
    {
        using var answer = await owner.Http.GetAsync(new Uri("/money" + query, UriKind.Relative), Stop);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Theory, InlineData(9), InlineData(10)]
    public async Task Every_figure_on_the_page_is_the_accounts_own_text(int month)
    {
        var (account, story) = (owner.Account(month), owner.Story(month));
        var (_, page) = await Page($"?month=2026-{month:00}");
        Assert.Contains($"<h1>{story.Headline}.</h1>", page, StringComparison.Ordinal);
        string[] texts =
        [
            .. story.Lede, story.Measured, story.WhereTitle, story.KilogramTitle, .. story.Kilogram, story.CarbonTitle, account.Cost!.Text, account.Span.UntilText,
            .. account.Days.Select(d => $"<td>{d.Amount!.Text}</td><td>{d.EnergyKwh.Text}</td>"),
            .. WhereRow.Of(account.Where, owner.Format).Select(r => $"<td>{r.Amount!.Text}</td><td>{r.Share.Text}</td>"),
            .. account.Comparisons.Select(c => $"<td>{c.Cost!.Text}</td><td>{c.Difference!.Text}</td>"), .. account.Lines.Select(l => l.Amount.Text), .. account.Prices.SelectMany(p => p.Texts),
        ];
        Assert.All(texts, text => Assert.Contains(text, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_month_that_makes_no_sense_is_answered_with_what_to_write_and_the_month_under_way()
    {
        var (status, page) = await Page("?month=October");
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("write a month like 2026-10", page, StringComparison.Ordinal);
        Assert.Contains(owner.Story().Headline, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_month_before_anything_was_known_says_how_the_numbers_come_here() =>
        Assert.Contains("Nothing is known of March 2026", (await Page("?month=2026-03")).Text, StringComparison.Ordinal);

    [Fact]
    public async Task A_year_shows_its_months_and_leads_to_each()
    {
        var (_, page) = await Page("?year=2026");
        Assert.Contains("href=\"/money?month=2026-09\"", page, StringComparison.Ordinal);
        Assert.Contains(owner.Account(9).Cost!.Text, page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_ways_lead_to_the_month_before_and_after_and_never_into_the_future()
    {
        var today = new LocalDate(2026, 10, 24);
        Assert.Equal(["month=2026-09", null, "year=2026"], SpanLink.Around(owner.Account(10).Span, today).Select(l => l.Query));
        Assert.Equal(["month=2026-08", null, "month=2026-10", "year=2026"], SpanLink.Around(owner.Account(9).Span, today).Select(l => l.Query));
    }
}
