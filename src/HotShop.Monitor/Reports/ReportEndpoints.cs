using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports.Pdf;
using NodaTime.Extensions;

namespace HotShop.Monitor.Reports;

static class ReportEndpoints
{
    /// <summary>The account as a file to keep: <c>/api/account.csv?month=2026-10</c>, and so for each form.</summary>
    public static void MapReports(this IEndpointRouteBuilder app)
    {
        foreach (var form in ReportForm.All)
            app.MapGet($"/api/account{form.Ending}", (string? month, string? year, string? first, string? last, StudioPlan plan, AccountBook book, TimeProvider clock) =>
            {
                var now = clock.GetUtcNow().ToInstant();
                var (from, to) = AccountEndpoints.Span(month, year, first, last, now.InZone(plan.Zone).Date);
                var account = book.Of(from, to, now);
                return TypedResults.File(form.Write(account, book.Format, now), form.ContentType, Path.ChangeExtension(ReportPdf.FileName(account.Span), form.Ending));
            }).RequireAuthorization(AccountEndpoints.OwnerOnly).WithName($"account-{form.Ending[1..]}").WithSummary($"The same account as a file ({form.Ending})").Produces(StatusCodes.Status200OK, contentType: form.ContentType.Split(';')[0]);
    }
}
