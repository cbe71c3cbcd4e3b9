using System.Net;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>One request as the receiver saw it.</summary>
sealed record Received(string Method, string Path, IReadOnlyDictionary<string, string> Headers, JsonNode? Body);

/// <summary>A real HTTP server that answers as told and keeps what it was sent.</summary>
sealed class HttpReceiver : IAsyncDisposable
{
    readonly WebApplication app;
    readonly Channel<Received> received = Channel.CreateUnbounded<Received>();

    HttpReceiver(WebApplication app) => this.app = app;

    public Func<int> Status { get; set; } = () => 200;

    /// <summary>Held back until this is done, for a server that hangs.</summary>
    public Task Until { get; set; } = Task.CompletedTask;

    public ChannelReader<Received> Received => received.Reader;

    public Uri Address => new(app.Urls.First());

    /// <param name="port">0: any that is free.</param>
    public static async Task<HttpReceiver> Start(int port = 0)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls($"http://{IPAddress.Loopback}:{port}");
        var receiver = new HttpReceiver(builder.Build());
        receiver.app.Run(receiver.Answer);
        await receiver.app.StartAsync();
        return receiver;
    }

    public IReadOnlyList<Received> Drain()
    {
        var all = new List<Received>();
        while (received.Reader.TryRead(out var one)) all.Add(one);
        return all;
    }

    public async ValueTask DisposeAsync() => await app.DisposeAsync();

    async Task Answer(HttpContext context)
    {
        using var text = new StreamReader(context.Request.Body);
        var body = await text.ReadToEndAsync();
        await Until.WaitAsync(context.RequestAborted);
        var status = Status();
        context.Response.StatusCode = status;
        if (status is >= 300 and < 400) context.Response.Headers.Location = "/elsewhere";
        // The server takes its header collection back after the answer.
        var headers = context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase);
        if (status < 300) received.Writer.TryWrite(new(context.Request.Method, context.Request.Path, headers, body.Length > 0 ? JsonNode.Parse(body) : null));
    }
}
