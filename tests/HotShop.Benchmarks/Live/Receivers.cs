using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Logging;

namespace HotShop.Benchmarks.Live;

/// <summary>Stands in for a push server: notes when each call arrives.</summary>
sealed class PushReceiver : IAsyncDisposable
{
    readonly WebApplication app;
    readonly Channel<long> calls = Channel.CreateUnbounded<long>();

    PushReceiver(WebApplication app) => this.app = app;

    public string Url => app.Urls.First() + "/push";

    /// <summary>Stopwatch stamps of the calls that came, closing notices left out.</summary>
    public ChannelReader<long> Calls => calls.Reader;

    public static async Task<PushReceiver> Start()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k => k.Listen(IPAddress.Loopback, 0));
        var receiver = new PushReceiver(builder.Build());
        receiver.app.MapPost("/push", (JsonElement body) =>
        {
            var stamp = Stopwatch.GetTimestamp();
            if (body.GetProperty("tags").EnumerateArray().Any(t => t.GetString() == "call")) receiver.calls.Writer.TryWrite(stamp);
        });
        await receiver.app.StartAsync();
        return receiver;
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();
}

/// <summary>A mail server that takes a second for every answer (RFC 5321, as little of it as a client needs).</summary>
sealed class SlowMail : IDisposable
{
    static readonly TimeSpan Slowness = TimeSpan.FromSeconds(1);
    readonly TcpListener listener = new(IPAddress.Loopback, 0);
    readonly CancellationTokenSource stop = new();
    int taken;

    public SlowMail(TimeProvider clock)
    {
        listener.Start();
        _ = Accept(clock);
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public int Taken => Volatile.Read(ref taken);

    async Task Accept(TimeProvider clock)
    {
        try
        {
            while (true) _ = Talk(await listener.AcceptTcpClientAsync(stop.Token), clock);
        }
        catch (Exception ended) when (ended is OperationCanceledException or ObjectDisposedException or SocketException) { }
    }

    async Task Talk(TcpClient client, TimeProvider clock)
    {
        try
        {
            using (client)
            {
                using var reader = new StreamReader(client.GetStream(), Encoding.ASCII);
                await using var writer = new StreamWriter(client.GetStream(), Encoding.ASCII) { NewLine = "\r\n", AutoFlush = true };
                var isMail = false;
                await Say("220 bench");
                while (await reader.ReadLineAsync(stop.Token) is { } line)
                {
                    if (isMail && line != ".") continue;
                    if (isMail) Interlocked.Increment(ref taken);
                    (isMail, var answer) = isMail ? (false, "250 taken") : line.ToUpperInvariant() switch
                    {
                        "DATA" => (true, "354 go on"),
                        "QUIT" => (false, "221 bye"),
                        _ => (false, "250 ok"),
                    };
                    await Say(answer);
                }

                async Task Say(string text)
                {
                    await Task.Delay(Slowness, clock, stop.Token);
                    await writer.WriteLineAsync(text);
                }
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or IOException) { }
    }

    public void Dispose()
    {
        stop.Cancel();
        listener.Dispose();
        stop.Dispose();
    }
}
