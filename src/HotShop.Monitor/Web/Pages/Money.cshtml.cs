using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Web.Pages;

/// <summary>What did it cost, where did it go, what changed: the account as a page, made by the service, readable without script. For the owner alone.</summary>
internal sealed class MoneyModel(StudioPlan plan, AccountBook book, TimeProvider clock) : PageModel
{
    /// <summary>The answer to a span that makes no sense: what came and what to write instead.</summary>
    public string? Problem { get; private set; }

    public bool IsOwner => User.IsInRole(AccessPolicies.Owner);

    public Account Account { get; private set; } = null!;

    public AccountStory Story { get; private set; } = null!;

    public CostStrip Strip { get; private set; } = null!;

    public IReadOnlyList<WhereRow> Where { get; private set; } = [];

    public StudioFormat Format => book.Format;

    public IReadOnlyList<SpanLink> Spans { get; private set; } = [];

    /// <summary>The span as the addresses of the files have it: month=2026-10.</summary>
    public string Query { get; private set; } = "";

    public IActionResult OnGet(string? month, string? year, string? first, string? last)
    {
        // A paired screen hangs where everybody looks.
        if (!IsOwner)
        {
            Response.StatusCode = StatusCodes.Status403Forbidden;
            return Page();
        }
        Load(month, year, first, last);
        return Page();
    }

    void Load(string? month, string? year, string? first, string? last)
    {
        var now = clock.GetUtcNow().ToInstant();
        var today = now.InZone(plan.Zone).Date;
        LocalDate from, to;
        try
        {
            (from, to) = AccountEndpoints.Span(month, year, first, last, today);
        }
        catch (BadHttpRequestException wrong)
        {
            Response.StatusCode = wrong.StatusCode;
            Problem = $"{char.ToUpperInvariant(wrong.Message[0])}{wrong.Message[1..]}. This is the month under way.";
            (from, to) = AccountEndpoints.Span(null, null, null, null, today);
        }
        Account = book.Of(from, to, now);
        Story = new AccountStory(Account, Format);
        Strip = new AccountStrip(Account, Format).Make();
        Where = WhereRow.Of(Account.Where, Format);
        Spans = [.. SpanLink.Around(Account.Span, today)];
        Query = SpanLink.QueryOf(Account.Span);
    }

    public Drawing WherePicture(double width, double size) => SplitPipe.Draw(
        [.. Where.Select(r => new SplitPipe.Branch(r.Tone, r.Title, r.Amount is { } amount ? $"{amount.Text}, {r.Share.Text}" : r.EnergyKwh.Text, r.Amount?.Value ?? (Account.Cost is null ? (decimal)r.EnergyKwh.Value : 0)))],
        amount => Account.Cost is null ? Format.Energy((double)amount) : Format.Amount(amount), $"{Story.WhereTitle}, as a pipe that splits; the table below says the same.", width, size);
}

/// <summary>A way to another span.</summary>
/// <param name="Query">Null for the span that is shown.</param>
internal sealed record SpanLink(string Words, string? Query, string? Says = null)
{
    public static string QueryOf(AccountSpan span) => span.Kind switch
    {
        SpanKind.Month => $"month={Iso(span.First)[..7]}",
        SpanKind.Year => $"year={Iso(span.First)[..4]}",
        _ => $"first={Iso(span.First)}&last={Iso(span.Last)}",
    };

    /// <summary>The one before, this one, the one after where it has begun, and the year or the month.</summary>
    public static IEnumerable<SpanLink> Around(AccountSpan span, LocalDate today)
    {
        switch (span.Kind)
        {
            case SpanKind.Year:
                yield return new($"{span.First.Year - 1}", $"year={span.First.Year - 1}", "The year before");
                yield return new(span.Title, null);
                if (span.First.Year < today.Year) yield return new($"{span.First.Year + 1}", $"year={span.First.Year + 1}", "The year after");
                yield return new(StudioFormat.Month(today), $"month={Iso(today)[..7]}", "The month under way");
                break;
            default:
                var first = span.First.With(DateAdjusters.StartOfMonth);
                yield return Month(first.PlusMonths(-1), "The month before");
                if (span.Kind == SpanKind.Month) yield return new(span.Title, null);
                else { yield return Month(first, "The whole month"); yield return new(span.Title, null); }
                if (first.PlusMonths(1) <= today) yield return Month(first.PlusMonths(1), "The month after");
                yield return new($"{first.Year}", $"year={first.Year}", "The whole year");
                break;
        }
    }

    static SpanLink Month(LocalDate first, string says) => new(LocalDatePattern.CreateWithInvariantCulture("MMMM").Format(first), $"month={Iso(first)[..7]}", says);

    static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
