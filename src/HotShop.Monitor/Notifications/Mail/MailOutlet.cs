using System.Globalization;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.Configuration;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace HotShop.Monitor.Notifications.Mail;

/// <summary>Sends by SMTP. A mail server keeps and forwards: that it took a message is no proof that a phone rang.</summary>
sealed class MailOutlet(MailOptions mail, string baseDirectory, TimeSpan timeLimit, TimeProvider wallClock) : IOutlet, ILetterOutlet
{
    public Task<SendResult> Send(OutletAddress to, OutgoingMessage message, CancellationToken stop) => Send(Write(to, message), stop);

    public Task<SendResult> Send(OutletAddress to, Letter letter, CancellationToken stop) => Send(Write(to, letter), stop);

    async Task<SendResult> Send(MimeMessage message, CancellationToken stop)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(timeLimit);
        var where = $"{mail.Host}:{mail.Port}";
        try
        {
            using var client = new SmtpClient { Timeout = (int)timeLimit.TotalMilliseconds };
            await client.ConnectAsync(mail.Host, mail.Port, Security(), limit.Token);
            if (mail.User is { } user) await client.AuthenticateAsync(user, await Password(limit.Token), limit.Token);
            var answer = await client.SendAsync(message, limit.Token);
            await Leave(client, limit.Token);
            return new SendResult.Accepted(answer);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return new SendResult.TryAgain(string.Create(CultureInfo.InvariantCulture, $"{where} did not finish within {timeLimit.TotalSeconds:0.#} s"), HasAnswered: false);
        }
        catch (SmtpCommandException refusal)
        {
            // RFC 5321: 4yz may be tried again, 5yz not with the same message.
            return (int)refusal.StatusCode >= 500
                ? new SendResult.Refused($"{where} refused the mail: {(int)refusal.StatusCode} {refusal.Message}")
                : new SendResult.TryAgain($"{where}: {(int)refusal.StatusCode} {refusal.Message}", HasAnswered: true);
        }
        catch (AuthenticationException refusal)
        {
            return new SendResult.TryAgain($"{where} did not accept user '{mail.User}' and its password: {refusal.Message}", HasAnswered: false);
        }
        catch (Exception failure) when (failure is IOException or SocketException or ProtocolException or SslHandshakeException or ServiceNotConnectedException
            or UnauthorizedAccessException or NotSupportedException or TimeoutException)
        {
            return new SendResult.TryAgain($"{where}: {failure.Message}", HasAnswered: false);
        }
    }

    internal MimeMessage Write(OutletAddress to, OutgoingMessage message)
    {
        var mime = Envelope(to, message.Title, message.Key);
        if (message.Kind == MessageKind.Call) mime.Importance = MessageImportance.High;
        mime.Body = new TextPart("plain") { Text = $"{message.Text}\n\n{message.Link}\n" };
        return mime;
    }

    internal MimeMessage Write(OutletAddress to, Letter letter)
    {
        var mime = Envelope(to, letter.Subject, $"{letter.Key}/{to.Person.Id}");
        var body = new BodyBuilder { TextBody = letter.Text, HtmlBody = letter.Html };
        foreach (var part in letter.Enclosures) body.Attachments.Add(part.FileName, part.Content, ContentType.Parse(part.MediaType));
        mime.Body = body.ToMessageBody();
        return mime;
    }

    MimeMessage Envelope(OutletAddress to, string subject, string key)
    {
        var mime = new MimeMessage { Subject = subject, MessageId = MessageId(key), Date = wallClock.GetUtcNow() };
        mime.From.Add(MailboxAddress.Parse(mail.From));
        mime.To.Add(new MailboxAddress(to.Person.Name, to.Options.Address ?? ""));
        mime.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");   // RFC 3834: no out-of-office answers
        return mime;
    }

    /// <summary>The same message has the same id at every attempt: mailboxes drop the second copy.</summary>
    string MessageId(string key)
    {
        var sender = MailboxAddress.Parse(mail.From).Domain;
        return $"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)))[..40]}@{(sender is { Length: > 0 } ? sender : "localhost")}";
    }

    SecureSocketOptions Security() => mail.Security switch
    {
        "tls" => SecureSocketOptions.SslOnConnect,
        "none" => SecureSocketOptions.None,
        _ => SecureSocketOptions.StartTls,
    };

    async Task<string> Password(CancellationToken stop) =>
        mail.PasswordFile is { } file
            ? (await File.ReadAllTextAsync(Path.Combine(baseDirectory, file), stop)).Trim()
            : Environment.GetEnvironmentVariable("HOTSHOP_MAIL_PASSWORD") ?? "";

    /// <summary>The mail is taken once the server has said so; a rude goodbye must not send it twice.</summary>
    static async Task Leave(SmtpClient client, CancellationToken stop)
    {
        try { await client.DisconnectAsync(quit: true, stop); }
        catch (Exception failure) when (failure is IOException or SocketException or ProtocolException or OperationCanceledException) { }
    }
}
