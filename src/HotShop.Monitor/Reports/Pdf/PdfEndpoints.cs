using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Reports.Pdf;

static class PdfEndpoints
{
    /// <summary>Money is the owner's.</summary>
    const string OwnerOnly = "Owner";

    public static void MapReportPdf(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/account.pdf", (string? month, string? year, string? first, string? last, StudioPlan plan, AccountBook book, TimeProvider clock) =>
        {
            var now = clock.GetUtcNow().ToInstant();
            var (from, to) = AccountEndpoints.Span(month, year, first, last, now.InZone(plan.Zone).Date);
            var account = book.Of(from, to, now);
            return TypedResults.Bytes(new ReportPdf(account, book.Format).Write(now), ReportPdf.MediaType, ReportPdf.FileName(account.Span));
        }).RequireAuthorization(OwnerOnly).WithName("account-pdf").WithSummary("The owner's report of a month, a year or any days: two pages of PDF").Produces(StatusCodes.Status200OK, contentType: ReportPdf.MediaType);
}
