using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Monitor.Web.Access;
using HotShop.Monitor.Web.Pages.Bills;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Web.Pages;

/// <summary>What did it cost, where did it go, what changed: the account as a page, made by the service, readable without script. For the owner alone.</summary>
internal sealed class MoneyModel(StudioPlan plan, AccountBook book, BillBook bills, TimeProvider clock) : PageModel
{
    /// <summary>The answer to a span that makes no sense: what came and what to write instead.</summary>
    public string? Problem { get; private set; }

    /// <summary>What was typed into the form and could not be kept.</summary>
    public BillDraft? Draft { get; private set; }

    public string? BillProblem { get; private set; }

    /// <summary>What became of a bill that was.</summary>
    public string? BillSaid { get; private set; }

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
        BillSaid = Request.Query["bill"].ToString() switch
        {
            "kept" => "The bill is kept. Where its days are not shown here, go to their month.",
            "known" => "That bill was kept before; nothing changed.",
            "struck" => "The bill is struck out. It stays in the export.",
            _ => null,
        };
        return Page();
    }

    /// <param name="span">The span that was looked at, as its address has it.</param>
    public async Task<IActionResult> OnPostBillAsync(BillDraft draft, string? span, CancellationToken stop)
    {
        if (!IsOwner) return Forbid();
        var result = await bills.Add(draft.Row(Format.DecimalMark, User.Identity?.Name), clock.GetUtcNow().ToInstant(), stop);
        var query = Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(span);
        string? Asked(string name) => query.TryGetValue(name, out var value) ? value.ToString() : null;
        if (result.Bill is { } bill)
        {
            // Back by GET, so that reloading keeps nothing twice.
            var words = bill.Quantity is null ? "struck" : result.IsNew ? "kept" : "known";
            return Redirect($"/money?{(Asked("month") ?? Asked("year") ?? Asked("first")) switch { null => "", _ => $"{string.Join('&', query.Select(q => $"{Uri.EscapeDataString(q.Key)}={Uri.EscapeDataString(q.Value.ToString())}"))}&" }}bill={words}#bills");
        }
        Load(Asked("month"), Asked("year"), Asked("first"), Asked("last"));
        (Draft, BillProblem) = (draft, result.Refusal!.TrimEnd('.'));
        Response.StatusCode = StatusCodes.Status400BadRequest;
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
