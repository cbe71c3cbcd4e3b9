using System.Net;
using System.Text;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Money;

/// <summary>The account over HTTP: raw numbers beside the shown texts, the same in every form, and clear words for what cannot be answered.</summary>
public sealed class AccountApiTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static async Task<TestService> Filled()
    {
        var service = await TestService.Start(AccountTests.Steady(prices: AccountTests.Plain));
        var to = service.Now;
        foreach (var (channel, value) in new[] { ("furnace-1/gas-flow", 1.0), ("glory-hole-1/gas-flow", 0.0), ("annealer-1/power", 2.0) }) await service.Send(channel, Times.Steady(value, Hours(1), to - Hours(40), to));
        await service.Move();
        return service;
    }

    [Fact]
    public async Task A_month_comes_as_JSON_with_numbers_texts_and_days()
    {
        await using var service = await Filled();
        var account = await service.Get("/api/account?month=2026-03");
        var cost = account.GetProperty("cost");
        // From midnight of 1 March until now, 9 in the morning of the 2nd: 33 hours at 1.00 and 0.60.
        Assert.Equal((52.80m, "52,80\u00a0€"), (cost.GetProperty("value").GetDecimal(), cost.GetProperty("text").GetString()));
        Assert.Equal(("2026-03-01", "month", true), (account.GetProperty("span").GetProperty("first").GetString(), account.GetProperty("span").GetProperty("kind").GetString(), account.GetProperty("span").GetProperty("isUnderWay").GetBoolean()));
        var part = account.GetProperty("days")[0].GetProperty("parts")[0];
        Assert.Equal(("furnace-1", "gas", "measured", "holding"), (part.GetProperty("appliance").GetString(), part.GetProperty("kind").GetString(), part.GetProperty("origin").GetString(), part.GetProperty("purpose").GetString()));
        // Without a question it is the month under way; the file is the same account.
        Assert.Equal(account.GetRawText(), (await service.Get("/api/account")).GetRawText());
        Assert.Equal(account.GetRawText(), (await service.Get("/api/account.json?month=2026-03")).GetRawText());
        using var csv = await service.Http.GetAsync(new Uri("/api/account.csv?month=2026-03", UriKind.Relative), Stop);
        Assert.Equal(("text/csv", "hotshop-2026-03.csv"), (csv.Content.Headers.ContentType!.MediaType, csv.Content.Headers.ContentDisposition!.FileName));
        Assert.Contains(";52,80;", await csv.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/account?month=March", 400, "'month' is 'March': write a month like 2026-10")]
    [InlineData("/api/account?month=2026-04", 400, "2026-04-01 is still to come")]
    [InlineData("/api/account?year=26", 400, "'year' is '26'")]
    [InlineData("/api/account?month=2026-03&year=2026", 400, "ask for one of")]
    [InlineData("/api/account?first=2026-03-02&last=2026-03-01", 400, "swap them")]
    [InlineData("/api/account.csv?first=2010-03-02&last=2026-03-01", 400, "more than ten years")]
    public async Task What_cannot_be_answered_says_why(string path, int status, string says)
    {
        await using var service = await TestService.Start(AccountTests.Steady(prices: AccountTests.Plain));
        var (answered, type, problem) = await service.Wrong(HttpMethod.Get, path);
        Assert.Equal((status, "application/problem+json"), (answered, type));
        Assert.Contains(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bill_is_kept_once_shown_beside_the_meters_and_refused_with_what_to_send()
    {
        await using var service = await Filled();
        async Task<HttpStatusCode> Post(string body)
        {
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var answer = await service.Http.PostAsync(new Uri("/api/bills", UriKind.Relative), content, Stop);
            return answer.StatusCode;
        }

        const string bill = """{"id":"b-1","energy":"gas","first":"2026-03-01","last":"2026-03-01","quantity":240.00,"unit":"kWh","amount":24}""";
        Assert.Equal([HttpStatusCode.Created, HttpStatusCode.OK], [await Post(bill), await Post(bill)]);
        var shown = Assert.Single((await service.Get("/api/bills")).EnumerateArray());
        Assert.Equal(("b-1", "240,00\u00a0kWh", 240.0, true), (shown.GetProperty("id").GetString(), shown.GetProperty("quantityText").GetString(), Math.Round(shown.GetProperty("metersKwh").GetProperty("value").GetDouble(), 6), shown.GetProperty("isWithinMeters").GetBoolean()));
        Assert.Equal("b-1", Assert.Single((await service.Get("/api/account?month=2026-03")).GetProperty("bills").EnumerateArray()).GetProperty("id").GetString());
        var (status, _, problem) = await service.Wrong(HttpMethod.Post, "/api/bills", """{"energy":"gas","first":"2026-03-01","last":"2026-03-01","kWh":240}""");
        Assert.Equal(400, status);
        Assert.StartsWith("there is no 'kWh' in a bill", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_address_of_money_is_the_owner_s()
    {
        await using var service = await TestService.Start(AccountTests.Steady(prices: AccountTests.Plain));
        var policies = service.The<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText is { } path && (path.StartsWith("/api/account", StringComparison.Ordinal) || path.StartsWith("/api/bills", StringComparison.Ordinal)))
            .Select(e => e.Metadata.GetMetadata<IAuthorizeData>()?.Policy).ToList();
        Assert.True(policies.Count >= 5);
        Assert.All(policies, p => Assert.Equal(AccessPolicies.Owner, p));
    }
}
