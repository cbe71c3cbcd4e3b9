using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Money;
using HotShop.Monitor.Notifications.Mail;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Mail;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Notifications;
using MimeKit;
using NodaTime;
using SmtpServer.Protocol;
using UglyToad.PdfPig;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The month's report by mail, over the whole service with a real store and a real mail server; only time is ours.</summary>
public sealed class ReportRoundTests : IAsyncDisposable
{
    readonly MailReceiver receiver = new();

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static Instant Utc(int month, int day, int hour, int minute = 0, int year = 2026) => Instant.FromUtc(year, month, day, hour, minute);

    Task<OwnersService> Studio(LocalDate? first, Instant filledUntil, string zone = "Europe/Berlin", params string[] mailTo) => OwnersService.Start(first, filledUntil, c => c with
    {
        Zone = zone,
        People = [.. new[] { "ana", "ben" }.Select(id => new PersonOptions { Id = id, Name = id, Outlets = [new() { Kind = "mail", Address = $"{id}@quillmere.example" }] })],
        Notifications = new() { Order = ["ana"], Mail = new() { Host = "127.0.0.1", Port = receiver.Port, Security = "none", From = "studio@quillmere.example" } },
        Reports = new() { MailTo = mailTo.Length > 0 ? mailTo : ["ana", "ben"] },
    }, isDemo: false);

    List<MimeMessage> Mails()
    {
        List<MimeMessage> mails = [];
        // Who is on call gets calls by mail as well: those enclose nothing.
        while (receiver.Received.TryRead(out var mail)) if (mail.Attachments.Any()) mails.Add(mail);
        return mails;
    }

    static string[] Short(IEnumerable<MimeMessage> mails) => [.. mails.Select(m => $"{m.To.Mailboxes.Single().LocalPart} {Assert.IsType<MimePart>(m.Attachments.Single()).FileName}")];

    [Fact]
    public async Task On_the_1st_at_seven_by_the_wall_each_owner_gets_the_month_once()
    {
        await using var studio = await Studio(new(2026, 10, 20), Utc(11, 1, 0));
        var round = studio.The<ReportRound>();
        await round.Run(Utc(11, 1, 5, 59), Stop);   // 06:59 in Berlin: September is due since long, and nothing is known of it
        Assert.Empty(Mails());
        Assert.All(studio.The<LetterPost>().History("report/"), l => Assert.Equal(("report/2026-09", "skipped"), (l.Key, l.State)));

        await round.Run(Utc(11, 1, 6), Stop);
        await round.Run(Utc(11, 1, 6, 10), Stop);
        await round.Run(Utc(11, 28, 6), Stop);
        Assert.Equal(["ana hotshop-2026-10.pdf", "ben hotshop-2026-10.pdf"], Short(Mails()));
        Assert.Equal((true, "the report of 2026-10 was mailed"), (studio.The<HealthBoard>().IsWorking(HealthBoard.Reports), studio.The<HealthBoard>().Of(HealthBoard.Reports)!.Detail));
    }

    [Fact]
    public async Task The_mail_says_what_the_page_says_and_encloses_the_same_figures()
    {
        await using var studio = await Studio(new(2026, 10, 20), Utc(11, 1, 0), mailTo: "ana");
        await studio.The<ReportRound>().Run(Utc(11, 1, 7), Stop);
        var mail = Mails().Single();
        var book = studio.The<AccountBook>();
        var story = new AccountStory(book.Of(new(2026, 10, 1), new(2026, 10, 31), Utc(11, 1, 7)), book.Format);
        Assert.Equal(story.Headline, mail.Subject);
        Assert.All(story.Lede.Append(story.Measured), sentence => Assert.Contains(sentence, mail.TextBody, StringComparison.Ordinal));
        Assert.Contains("/money?month=2026-10", mail.TextBody, StringComparison.Ordinal);
        using var bytes = new MemoryStream();
        Assert.IsType<MimePart>(mail.Attachments.Single()).Content!.DecodeTo(bytes, Stop);
        using var pdf = PdfDocument.Open(bytes.ToArray());
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.NotEqual(MessageImportance.High, mail.Importance);
    }

    [Fact]
    public async Task A_service_that_was_down_over_two_firsts_catches_up_both_months_in_order()
    {
        await using var studio = await Studio(new(2026, 8, 25), Utc(11, 4, 9), mailTo: "ana");
        await studio.The<ReportRound>().Run(Utc(9, 2, 9), Stop);
        Assert.Equal(["ana hotshop-2026-08.pdf"], Short(Mails()));
        await studio.The<ReportRound>().Run(Utc(11, 4, 9), Stop);
        Assert.Equal(["ana hotshop-2026-09.pdf", "ana hotshop-2026-10.pdf"], Short(Mails()));
    }

    [Fact]
    public async Task A_mail_server_that_is_busy_gets_it_in_a_later_round_and_nobody_gets_it_twice()
    {
        await using var studio = await Studio(new(2026, 10, 25), Utc(11, 1, 0));
        var answers = 0;
        receiver.Answer = () => answers++ == 0 ? SmtpResponse.Ok : new SmtpResponse(SmtpReplyCode.InsufficientStorage, "later");
        await studio.The<ReportRound>().Run(Utc(11, 1, 7), Stop);
        Assert.Contains("it is tried again", studio.The<HealthBoard>().Of(HealthBoard.Reports)!.Detail, StringComparison.Ordinal);
        receiver.Answer = () => SmtpResponse.Ok;
        await studio.The<ReportRound>().Run(Utc(11, 1, 7, 10), Stop);
        Assert.Equal(["ana hotshop-2026-10.pdf", "ben hotshop-2026-10.pdf"], Short(Mails()).Order());
        Assert.True(studio.The<HealthBoard>().IsWorking(HealthBoard.Reports));
    }

    [Fact]
    public async Task An_address_that_does_not_exist_is_said_on_the_health_page_and_wakes_nobody()
    {
        await using var studio = await Studio(new(2026, 10, 28), Utc(11, 1, 0), mailTo: "ana");
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such mailbox");
        await studio.The<ReportRound>().Run(Utc(11, 1, 7), Stop);
        var part = studio.The<HealthBoard>().Of(HealthBoard.Reports)!;
        Assert.False(part.IsWorking);
        Assert.Contains("no such mailbox", part.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain(studio.The<Monitor.Alarms.IAlarmDesk>().Current, a => a.Id.Contains("reports", StringComparison.Ordinal));
    }

    // Quartz, on the test's clock: nobody calls the round by hand here.
    [Theory]
    [InlineData("Europe/Berlin", "2026-11-01T05:50:00Z", 10)]      // the 1st at 07:00 in winter
    [InlineData("America/New_York", "2026-11-01T10:50:00Z", 70)]   // the clock went back five hours before: 07:00 is 12:00 UTC
    public async Task The_calendar_itself_sends_it_at_seven(string zone, string start, int minutesUntilSeven)
    {
        var from = NodaTime.Text.InstantPattern.ExtendedIso.Parse(start).Value;
        await using var studio = await Studio(new(2026, 10, 26), from, zone, "ana");
        for (var minute = 0; minute < minutesUntilSeven - 1; minute++) studio.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Empty(Mails());
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        var mail = await Mail(studio);
        Assert.Equal(["ana hotshop-2026-10.pdf"], Short([mail]));
    }

    /// <summary>Quartz wakes on threads of its own: the clock goes on until it has.</summary>
    async Task<MimeMessage> Mail(OwnersService studio)
    {
        List<MimeMessage> mails = [];
        await Patience.Until(() =>
        {
            studio.Clock.Advance(TimeSpan.FromSeconds(1));
            mails.AddRange(Mails());
            return mails.Count > 0;
        }, () => "the report comes");
        return Assert.Single(mails);
    }

    public async ValueTask DisposeAsync() => await receiver.DisposeAsync();
}
