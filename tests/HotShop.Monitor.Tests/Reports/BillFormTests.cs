using System.Net;
using System.Text.RegularExpressions;
using HotShop.Monitor.Money;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>Bills typed into the money page, as a browser posts its form.</summary>
[Collection("owner")]
public sealed partial class BillFormTests(OwnersOctober owner)
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    async Task<(HttpStatusCode Status, string Page)> Post(params (string Name, string Value)[] fields)
    {
        using var shown = await owner.Http.GetAsync(new Uri("/money?month=2026-09", UriKind.Relative), Stop);
        var token = Token().Match(await shown.Content.ReadAsStringAsync(Stop)).Groups[1].Value;
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/money?handler=Bill&span=month%3D2026-09", UriKind.Relative)) { Content = form };
        request.Headers.Add("Origin", owner.Service.Address);
        using var answer = await owner.Http.SendAsync(request, Stop);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task A_bill_typed_as_the_paper_has_it_is_kept_once_and_laid_beside_the_meters()
    {
        (string, string)[] september = [("Id", "paper-1"), ("Energy", "gas"), ("First", "2026-09-01"), ("Last", "2026-09-30"), ("Quantity", "34.567,5"), ("Unit", "kWh"), ("Amount", "3.859,43")];
        var (_, first) = await Post(september);
        Assert.Contains("The bill is kept.", first, StringComparison.Ordinal);
        Assert.Contains("That bill was kept before", (await Post(september)).Page, StringComparison.Ordinal);
        var bill = Assert.Single(owner.Account(9).Bills, b => b.Id == "paper-1");
        Assert.Equal((34567.5, 3859.43m), (bill.EnergyKwh.Value, bill.Amount!.Value.Value));
        Assert.Contains(bill.QuantityText, first, StringComparison.Ordinal);
        Assert.Contains(bill.MetersKwh!.IntervalText, first, StringComparison.Ordinal);

        var (_, struck) = await Post(("Energy", "gas"), ("First", "2026-09-01"), ("Last", "2026-09-30"), ("Corrects", "paper-1"));
        Assert.Contains("The bill is struck out.", struck, StringComparison.Ordinal);
        Assert.DoesNotContain(owner.Account(9).Bills, b => b.Id == "paper-1");
    }

    [Fact]
    public async Task A_slip_is_named_and_what_was_typed_is_still_there()
    {
        var (status, page) = await Post(("Energy", "gas"), ("First", "2026-09-30"), ("Last", "2026-09-01"), ("Quantity", "12,5"), ("Unit", "kWh"), ("Note", "the <blue> one"));
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("Not kept: 'last' is before 'first'", page, StringComparison.Ordinal);
        Assert.Contains("value=\"12,5\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"the <blue> one\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        var before = owner.Service.The<BillBook>().All().Count;
        using var form = new FormUrlEncodedContent([new("Energy", "gas"), new("First", "2026-09-01"), new("Last", "2026-09-30"), new("Quantity", "5"), new("Unit", "kWh")]);
        using var answer = await owner.Http.PostAsync(new Uri("/money?handler=Bill", UriKind.Relative), form, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(before, owner.Service.The<BillBook>().All().Count);
    }
}
