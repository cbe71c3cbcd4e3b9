using HotShop.Monitor.Money;
using HotShop.Monitor.Reports.Pdf;
using NodaTime;

namespace HotShop.Monitor.Reports;

/// <summary>A form in which an account can be written to a file.</summary>
/// <param name="Ending">Of the file's name, with its point.</param>
/// <param name="ContentType">For a download.</param>
/// <param name="Write">From the account, the studio's way of writing, and the moment it is made.</param>
sealed record ReportForm(string Ending, string ContentType, Func<Account, StudioFormat, Instant, byte[]> Write)
{
    public static IReadOnlyList<ReportForm> All { get; } =
    [
        new(".csv", "text/csv; charset=utf-8", (account, format, _) => AccountCsv.Of(account, format)),
        new(".json", "application/json; charset=utf-8", (account, _, _) => AccountJson.Of(account)),
        new(".pdf", ReportPdf.MediaType, (account, format, madeAt) => new ReportPdf(account, format).Write(madeAt)),
    ];

    /// <returns>Null where a file of that name cannot be written.</returns>
    public static ReportForm? Of(string fileName) => All.FirstOrDefault(f => fileName.EndsWith(f.Ending, StringComparison.OrdinalIgnoreCase));

    public static string Endings => string.Join(", ", All.Select(f => f.Ending));
}
