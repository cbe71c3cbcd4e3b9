using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Mail;
using Microsoft.Extensions.Time.Testing;
using MimeKit;
using SmtpServer.Protocol;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class MailOutletTests : IAsyncLifetime
{
    readonly MailReceiver receiver = new();

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public ValueTask DisposeAsync() => receiver.DisposeAsync();

    [Fact]
    public async Task A_mail_says_the_same_as_the_phone_and_asks_for_no_automatic_answer()
    {
        Assert.IsType<SendResult.Accepted>(await Send());
        var mail = await receiver.Received.ReadAsync(Stop);
        Assert.Equal(("Priority 1: Öfen, overheat", "Ana <ana@quillmere.example>"), (mail.Subject, mail.To.ToString().Replace("\"", "", StringComparison.Ordinal)));
        Assert.Equal("#3 Furnace 1 is 1302 °C.\n\nhttps://quillmere.example/night/f?t=x", mail.TextBody!.ReplaceLineEndings("\n").Trim());
        Assert.Equal("auto-generated", mail.Headers[HeaderId.AutoSubmitted]);   // RFC 3834
        Assert.Equal(MessageImportance.High, mail.Importance);
    }

    [Fact]
    public async Task A_mail_sent_twice_has_one_id_so_that_the_mailbox_drops_the_second()
    {
        await Send();
        await Send();
        var (first, second) = (await receiver.Received.ReadAsync(Stop), await receiver.Received.ReadAsync(Stop));
        Assert.Equal(first.MessageId, second.MessageId);
        await Send(key: "f/4/ana/mail");
        Assert.NotEqual(first.MessageId, (await receiver.Received.ReadAsync(Stop)).MessageId);
    }

    [Fact]
    public async Task A_mailbox_that_is_busy_is_tried_again_and_one_that_refuses_is_not()
    {
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.InsufficientStorage, "later");   // 452
        Assert.True(Assert.IsType<SendResult.TryAgain>(await Send()).HasAnswered);
        receiver.Answer = () => new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such mailbox");   // 550
        Assert.Contains("no such mailbox", Assert.IsType<SendResult.Refused>(await Send()).Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slow_mail_server_is_given_up_in_real_time()
    {
        receiver.Until = new TaskCompletionSource().Task;
        Assert.False(Assert.IsType<SendResult.TryAgain>(await Send(limit: TimeSpan.FromMilliseconds(500))).HasAnswered);
    }

    [Fact]
    public async Task A_mail_server_that_is_not_there_is_tried_again()
    {
        var nobody = new MailReceiver();
        await nobody.DisposeAsync();
        Assert.False(Assert.IsType<SendResult.TryAgain>(await Send(port: nobody.Port)).HasAnswered);
    }

    [Fact]
    public async Task Where_encryption_is_asked_for_and_not_offered_nothing_is_sent()
    {
        Assert.IsType<SendResult.TryAgain>(await Send(security: "starttls"));
        Assert.False(receiver.Received.TryRead(out _));
    }

    Task<SendResult> Send(string key = "f/3/ana/mail", TimeSpan? limit = null, int? port = null, string security = "none")
    {
        var options = new OutletOptions { Kind = "mail", Address = "ana@quillmere.example" };
        var mail = new MailOptions { Host = "127.0.0.1", Port = port ?? receiver.Port, Security = security, From = "Hot shop <night@quillmere.example>" };
        var message = new OutgoingMessage(key, MessageKind.Call, "f", 3, 1, "Priority 1: Öfen, overheat", "#3 Furnace 1 is 1302 °C.", new("https://quillmere.example/night/f?t=x"));
        return new MailOutlet(mail, ".", limit ?? TimeSpan.FromSeconds(30), new FakeTimeProvider()).Send(new(TestNight.Person("ana", options), "mail", options), message, Stop);
    }
}
