using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Mail;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using MimeKit;
using SmtpServer.Protocol;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>Mails that are no calls, over a real store and to a real mail server.</summary>
public sealed class LetterPostTests : IAsyncDisposable
{
    static readonly string[] Both = ["ana", "ben"];
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-letter-").FullName;
    readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 11, 1, 6, 0, 0, TimeSpan.Zero));
    readonly MailReceiver receiver = new();
    readonly NotificationStore store;
    int written;

    public LetterPostTests() => store = new NotificationStore(Path.Combine(folder, "hotshop.db"), time);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_person_gets_a_letter_once_and_it_is_written_once()
    {
        Assert.Equal(Both, (await Deliver(Post())).Sent);
        Assert.Equal(1, written);

        Assert.Empty((await Deliver(Post())).Sent);   // a new process
        Assert.Equal(1, written);
        Assert.Equal(2, Mails().Count);
    }

    [Fact]
    public async Task Somebody_named_later_gets_it_alone()
    {
        await Post().Deliver("report/2026-10", ["ana"], Write, Stop);
        Assert.Equal(["ben"], (await Deliver(Post())).Sent);
    }

    [Fact]
    public async Task The_enclosure_arrives_byte_for_byte_and_the_words_twice()
    {
        await Post().Deliver("report/2026-10", ["ana"], Write, Stop);
        var mail = Mails().Single();
        var part = Assert.IsType<MimePart>(mail.Attachments.Single());
        using var bytes = new MemoryStream();
        part.Content!.DecodeTo(bytes, Stop);
        Assert.Equal(("Quillmere-2026-10.pdf", "application/pdf", "%PDF ₂"), (part.FileName, part.ContentType.MimeType, Encoding.UTF8.GetString(bytes.ToArray())));
        Assert.Equal(("October cost € 1.", "<p>October cost € 1.</p>"), (mail.TextBody?.Trim(), mail.HtmlBody?.Trim()));
        Assert.Equal("auto-generated", mail.Headers[HeaderId.AutoSubmitted]);
        Assert.NotEqual(MessageImportance.High, mail.Importance);
    }

    [Fact]
    public async Task A_busy_mail_server_is_tried_again_and_a_refusal_is_not()
    {
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.InsufficientStorage, "later");
        Assert.Equal(Both, (await Deliver(Post())).Waiting.Keys.Order());
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such mailbox");
        Assert.Equal(Both, (await Deliver(Post())).Refused);
        receiver.Answer = () => SmtpResponse.Ok;
        Assert.Empty((await Deliver(Post())).Sent);
        Assert.All(Post().History("report/"), l => Assert.Equal(("refused", 2), (l.State, l.Attempts)));
    }

    // The mail server has it, the disk is full: this process knows, and does not send it again.
    [Fact]
    public async Task A_store_that_fails_after_the_mail_left_sends_no_second_one()
    {
        var post = Post();
        receiver.Answer = () => { store.IsBroken = true; return SmtpResponse.Ok; };
        await Assert.ThrowsAsync<IOException>(() => Deliver(post));
        store.IsBroken = false;
        receiver.Answer = () => SmtpResponse.Ok;
        await Deliver(post);
        Assert.Equal(["ana", "ben"], Mails().Select(m => m.To.Mailboxes.Single().LocalPart).Order());
    }

    [Fact]
    public async Task A_process_that_died_before_noting_it_sends_the_same_message_id_again()
    {
        receiver.Answer = () => { store.IsBroken = true; return SmtpResponse.Ok; };
        await Assert.ThrowsAsync<IOException>(() => Post().Deliver("report/2026-10", ["ana"], Write, Stop));
        store.IsBroken = false;
        receiver.Answer = () => SmtpResponse.Ok;
        await Post().Deliver("report/2026-10", ["ana"], Write, Stop);
        var mails = Mails();
        Assert.Equal(2, mails.Count);
        Assert.Single(mails.Select(m => m.MessageId).Distinct());
    }

    [Fact]
    public async Task What_is_skipped_says_why_and_is_never_sent()
    {
        await Post().Skip("report/2026-10", Both, "nothing is known of October", Stop);
        Assert.Empty((await Deliver(Post())).Sent);
        Assert.All(Post().History("report/2026-10"), l => Assert.Equal(("skipped", "nothing is known of October"), (l.State, l.Note)));
    }

    [Fact]
    public async Task A_person_without_a_mail_address_is_refused_with_the_reason()
    {
        await Post().Deliver("report/2026-10", ["cleo"], Write, Stop);
        Assert.Contains("no mail address", Post().History("report/").Single().Note, StringComparison.Ordinal);
    }

    Task<Delivery> Deliver(LetterPost post) => post.Deliver("report/2026-10", Both, Write, Stop);

    Letter Write()
    {
        written++;
        return new("report/2026-10", "October", "October cost € 1.", "<p>October cost € 1.</p>") { Enclosures = [new("Quillmere-2026-10.pdf", "application/pdf", Encoding.UTF8.GetBytes("%PDF ₂"))] };
    }

    List<MimeMessage> Mails()
    {
        List<MimeMessage> mails = [];
        while (receiver.Received.TryRead(out var mail)) mails.Add(mail);
        return mails;
    }

    LetterPost Post()
    {
        var options = new MailOptions { Host = "127.0.0.1", Port = receiver.Port, Security = "none", From = "studio@quillmere.example" };
        var plan = TestNight.PlanFor([Person("ana", mail: true), Person("ben", mail: true), Person("cleo", mail: false)], folder, new() { Order = ["ana"], Mail = options });
        return new(new MailOutlet(options, folder, TimeSpan.FromSeconds(20), time), plan, store, store, NullLogger<LetterPost>.Instance);
    }

    static PersonOptions Person(string id, bool mail) => new()
    {
        Id = id, Name = id,
        Outlets = [mail ? new() { Kind = "mail", Address = $"{id}@quillmere.example" } : new() { Kind = "push", Url = "https://push.example/", Topic = id }],
    };

    public async ValueTask DisposeAsync()
    {
        await receiver.DisposeAsync();
        store.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}
