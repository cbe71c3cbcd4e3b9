using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Notifications.Mail;
using HotShop.Monitor.Tests.Notifications;
using HotShop.Monitor.Tests.Support;
using MimeKit;
using NodaTime;
using SmtpServer.Protocol;
using Xunit;
using static HotShop.Monitor.Tests.Handover.MorningStudio;

namespace HotShop.Monitor.Tests.Handover;

/// <summary>The morning's mail, with a clock of the test's and a real mail server.</summary>
public sealed class HandoverPostTests : IAsyncDisposable
{
    readonly MailReceiver receiver = new();
    OpenStudio studio;

    public HandoverPostTests() => studio = MorningStudio.Open(Configuration("07:00"), At(4, 6));

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await studio.DisposeAsync();
        await receiver.DisposeAsync();
    }

    StudioConfiguration Configuration(string hour, string days = "daily") => SomeStudio.Configuration with
    {
        People = [Person("ana", "Ana"), Person("ben", "Ben")],
        Notifications = new() { Order = ["ben"], Mail = new() { Host = "127.0.0.1", Port = receiver.Port, Security = "none", From = "studio@quillmere.example" } },
        Handover = new() { Hour = hour, Days = days, MailTo = ["ana", "ben"] },
        Http = new() { Listen = "127.0.0.1:0", PublicAddress = "https://quillmere.example" },
    };

    static PersonOptions Person(string id, string name) => new() { Id = id, Name = name, Outlets = [new() { Kind = "mail", Address = $"{id}@quillmere.example" }] };

    async Task With(StudioConfiguration configuration, Instant now)
    {
        await studio.DisposeAsync();
        studio = MorningStudio.Open(configuration, now);
    }

    async Task<List<MimeMessage>> Look(Instant at)
    {
        if (at > studio.Now) studio.Now = at;
        await studio.The<HandoverPost>().Look(Stop);
        return Drain();
    }

    List<MimeMessage> Drain()
    {
        var mails = new List<MimeMessage>();
        while (receiver.Received.TryRead(out var mail)) mails.Add(mail);
        return mails;
    }

    static IEnumerable<string> To(IEnumerable<MimeMessage> mails) => mails.Select(m => m.To.Mailboxes.Single().Address);

    [Fact]
    public async Task At_its_hour_everybody_named_gets_it_once_and_a_restart_sends_none_again()
    {
        Assert.Empty(await Look(At(4, 6, 59)));
        Assert.Equal(["ana@quillmere.example", "ben@quillmere.example"], To(await Look(At(4, 7))));
        Assert.Empty(await Look(At(4, 7, 1)));
        await studio.Restart();
        Assert.Empty(await Look(At(4, 7, 2)));
        Assert.Equal(2, (await Look(At(5, 7))).Count);
    }

    [Fact]
    public async Task After_a_short_downtime_it_is_caught_up_and_after_three_hours_it_is_skipped_and_said()
    {
        await Look(At(4, 6, 59));   // the morning before is long over
        Assert.Equal(2, (await Look(At(4, 9, 59))).Count);
        Assert.Empty(await Look(At(5, 10)));
        Assert.Empty(await Look(At(5, 10, 1)));
        Assert.Contains("This morning's mail to Ana and Ben was not sent: the service could not send it within three hours of its time.", studio.Morning().MailNote, StringComparison.Ordinal);
        Assert.Null(studio.Morning(At(4, 11)).MailNote);
        Assert.Equal(2, (await Look(At(6, 7))).Count);
    }

    [Fact]
    public async Task A_busy_mail_server_is_asked_again_and_its_answer_is_on_the_page_meanwhile()
    {
        await Look(At(4, 6, 59));
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.InsufficientStorage, "later");   // 452
        Assert.Empty(await Look(At(4, 7)));
        Assert.Contains("waits", studio.Morning().MailNote, StringComparison.Ordinal);
        receiver.Answer = () => SmtpResponse.Ok;
        Assert.Empty(await Look(At(4, 7) + Duration.FromSeconds(30)));   // not before a minute has passed
        Assert.Equal(2, (await Look(At(4, 7, 1))).Count);
        Assert.Null(studio.Morning().MailNote);
    }

    // The clocks of Berlin change on 29 March and 25 October 2026 (IANA time zone database).
    [Fact]
    public async Task On_the_mornings_of_both_clock_changes_it_comes_once_at_the_hour_of_the_wall_clock()
    {
        await With(Configuration("02:30"), At(28, 12));
        await Look(At(28, 12, 1));
        Assert.Empty(await Look(Instant.FromUtc(2026, 3, 29, 0, 59)));
        var spring = new List<MimeMessage>();
        for (var at = Instant.FromUtc(2026, 3, 29, 1, 0); at < Instant.FromUtc(2026, 3, 29, 4, 0); at += Duration.FromMinutes(10)) spring.AddRange(await Look(at));
        Assert.Equal(2, spring.Count);

        await Look(Instant.FromUtc(2026, 10, 24, 12, 0));
        var autumn = new List<(Instant At, MimeMessage Mail)>();
        for (var at = Instant.FromUtc(2026, 10, 24, 23, 0); at < Instant.FromUtc(2026, 10, 25, 4, 0); at += Duration.FromMinutes(10)) autumn.AddRange((await Look(at)).Select(m => (at, m)));
        Assert.Equal(2, autumn.Count);
        Assert.All(autumn, sent => Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), sent.At));
    }

    [Fact]
    public async Task On_a_day_that_is_not_named_none_is_sent()
    {
        await With(Configuration("07:00", "tue-sat"), At(7, 6));
        await Look(At(7, 6, 30));
        Assert.Equal(2, (await Look(At(7, 7))).Count);    // Saturday
        Assert.Empty(await Look(At(8, 7)));
        Assert.Empty(await Look(At(9, 7)));
        Assert.Equal(2, (await Look(At(10, 7))).Count);   // Tuesday
    }

    [Fact]
    public async Task Who_is_called_at_night_has_nothing_to_do_with_who_gets_the_mail()
    {
        await Look(At(4, 6, 59));
        Assert.Contains("ana@quillmere.example", To(await Look(At(4, 7))));   // only Ben is in the order of calling
    }

    [Fact]
    public async Task The_mail_says_what_the_page_says_in_text_and_without_pictures()
    {
        await Look(At(4, 6, 59));
        var mail = (await Look(At(4, 7)))[0];
        var morning = studio.Morning();
        Assert.Equal(studio.Words().Headline(morning), mail.Subject);
        foreach (var line in studio.Words().Sections(morning).SelectMany(s => s.Lines))
        {
            Assert.Contains(line.Text, mail.TextBody!.ReplaceLineEndings(" "), StringComparison.Ordinal);
            Assert.Contains(System.Net.WebUtility.HtmlEncode(line.Text), mail.HtmlBody!, StringComparison.Ordinal);
        }
        Assert.Contains("https://quillmere.example/morning?day=2026-03-04", mail.TextBody, StringComparison.Ordinal);
        Assert.Contains(HandoverWords.Caution, mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", mail.HtmlBody, StringComparison.Ordinal);
        Assert.NotEqual(MessageImportance.High, mail.Importance);   // no call
        Assert.Equal(0, studio.Scalar("SELECT count(*) FROM outbox"));
    }
}
