using System.Net;
using HotShop.Monitor.Money;
using HotShop.Monitor.Notifications.Mail;
using HotShop.Monitor.Reports.Pdf;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Reports.Mail;

/// <summary>The month's report as a mail: a few sentences, the same as on the page, and the PDF.</summary>
static class ReportLetter
{
    public static string Key(YearMonth month) => $"report/{YearMonthPattern.Iso.Format(month)}";

    /// <returns>Null for a key of something else.</returns>
    public static YearMonth? MonthOf(string key) =>
        key.StartsWith("report/", StringComparison.Ordinal) && YearMonthPattern.Iso.Parse(key["report/".Length..]) is { Success: true } month ? month.Value : null;

    /// <param name="pages">Where the pages are reached.</param>
    public static Letter Write(Account account, StudioFormat format, YearMonth month, Uri pages, Instant now)
    {
        var story = new AccountStory(account, format);
        List<string> paragraphs =
        [
            story.Headline + ".", .. story.Lede, .. story.Gaps, story.Measured,
            .. account.PerUnit.PerKilogram is null ? [] : new[] { $"{story.KilogramTitle}. {story.Kilogram[0]}" },
        ];
        var link = new Uri(pages, $"money?month={YearMonthPattern.Iso.Format(month)}");
        const string enclosed = "The report is enclosed as PDF. With all days and lines, and as a spreadsheet, it is on the page:";
        var text = $"{account.Span.Studio}\n\n{string.Join("\n\n", paragraphs)}\n\n{enclosed}\n{link}\n";
        var html = $"<!doctype html><html lang=\"en\"><body style=\"font:16px/1.45 sans-serif;max-width:38em\"><p>{WebUtility.HtmlEncode(account.Span.Studio)}</p>"
            + $"<h1 style=\"font-size:22px;font-weight:normal\">{WebUtility.HtmlEncode(paragraphs[0])}</h1>"
            + string.Concat(paragraphs.Skip(1).Select(p => $"<p>{WebUtility.HtmlEncode(p)}</p>"))
            + $"<p>{enclosed} <a href=\"{WebUtility.HtmlEncode(link.ToString())}\">{WebUtility.HtmlEncode(account.Span.Title)}</a></p></body></html>";
        return new Letter(Key(month), $"{story.Headline}", text, html)
        {
            Enclosures = [new(ReportPdf.FileName(account.Span), ReportPdf.MediaType, new ReportPdf(account, format).Write(now))],
        };
    }
}
