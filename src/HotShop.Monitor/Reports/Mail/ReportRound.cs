using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Money;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Mail;
using NodaTime;

namespace HotShop.Monitor.Reports.Mail;

/// <summary>
/// Mails each month's report to whom it is due, each month once to each person, and catches up what was missed while the service was down. A report is no alarm: nobody is
/// called, and what could not be sent waits for the next round.
/// </summary>
sealed class ReportRound(StudioPlan plan, AccountBook book, LetterPost post, HealthBoard health)
{
    ReportOptions Options => plan.Configuration.Reports;

    public async Task Run(Instant now, CancellationToken stop)
    {
        if (Options.MailTo.Count == 0) return;
        var wanted = Options.MailTo.SelectMany(person => Due(person, now).Select(month => (Month: month, Person: person))).ToLookup(d => d.Month, d => d.Person);
        foreach (var month in wanted.OrderBy(m => m.Key)) await Send(month.Key, [.. month], now, stop);
        Say(now);
    }

    IEnumerable<YearMonth> Due(string person, Instant now)
    {
        var settled = post.History("report/").Where(l => l.Person == person && l.IsSettled).Select(l => ReportLetter.MonthOf(l.Key)).OfType<YearMonth>().ToList();
        return ReportCalendar.Due(settled.Count > 0 ? settled.Max() : null, now, Options.Hour, plan.Zone);
    }

    async Task Send(YearMonth month, IReadOnlyList<string> people, Instant now, CancellationToken stop)
    {
        var first = month.OnDayOfMonth(1);
        var account = book.Of(first, first.With(DateAdjusters.EndOfMonth), now);
        if (new AccountStory(account, book.Format).IsEmpty)
            await post.Skip(ReportLetter.Key(month), people, $"nothing is known of {account.Span.Title}", stop);
        else
            await post.Deliver(ReportLetter.Key(month), people, () => ReportLetter.Write(account, book.Format, month, NightLinks.BaseAddress(plan.Configuration.Http), now), stop);
    }

    /// <summary>How the newest report fared.</summary>
    void Say(Instant now)
    {
        var key = ReportLetter.Key(ReportCalendar.Newest(now, Options.Hour, plan.Zone));
        var newest = post.History(key).Where(l => l.Key == key && Options.MailTo.Contains(l.Person)).ToList();
        var month = key["report/".Length..];
        if (newest.FirstOrDefault(l => l.State is "refused" or "waiting") is { } stuck)
            health.Report(HealthBoard.Reports, false, $"the report of {month} did not reach {stuck.Person}: {stuck.Note.TrimEnd('.')}{(stuck.State == "waiting" ? "; it is tried again" : "; it is not tried again: the money page has it")}", now);
        else
            health.Report(HealthBoard.Reports, true, newest.Any(l => l.State == "sent") ? $"the report of {month} was mailed" : newest.FirstOrDefault()?.Note ?? "none is due yet", now);
    }
}
