using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Threading.Channels;
using MimeKit;
using SmtpServer;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>A real SMTP server that answers as told and keeps what it took.</summary>
sealed class MailReceiver : MessageStore, IAsyncDisposable
{
    readonly Channel<MimeMessage> received = Channel.CreateUnbounded<MimeMessage>();
    readonly CancellationTokenSource stop = new();
    readonly SmtpServer.SmtpServer server;
    readonly Task running;

    public MailReceiver()
    {
        Port = FreePort();
        var options = new SmtpServerOptionsBuilder().ServerName("mail.quillmere.example").Endpoint(e => e.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))).Build();
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(this);
        server = new SmtpServer.SmtpServer(options, services);
        running = server.StartAsync(stop.Token);
    }

    public int Port { get; }

    public Func<SmtpResponse> Answer { get; set; } = () => SmtpResponse.Ok;

    public Task Until { get; set; } = Task.CompletedTask;

    public ChannelReader<MimeMessage> Received => received.Reader;

    public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        await Until.WaitAsync(cancellationToken);
        var answer = Answer();
        if ((int)answer.ReplyCode < 300)
        {
            using var bytes = new MemoryStream(buffer.ToArray());
            received.Writer.TryWrite(await MimeMessage.LoadAsync(bytes, cancellationToken));
        }
        return answer;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        try { await running; }
        catch (OperationCanceledException) { }
        stop.Dispose();
    }

    static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
