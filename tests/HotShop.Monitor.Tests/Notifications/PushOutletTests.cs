using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Push;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class PushOutletTests : IAsyncLifetime
{
    readonly HttpMessageInvoker http = new(new SocketsHttpHandler { AllowAutoRedirect = false });
    HttpReceiver receiver = null!;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => receiver = await HttpReceiver.Start();

    public async ValueTask DisposeAsync()
    {
        http.Dispose();
        await receiver.DisposeAsync();
    }

    [Fact]
    public async Task A_push_carries_topic_title_words_urgency_and_a_link_to_tap()
    {
        Assert.IsType<SendResult.Accepted>(await Send());
        var got = await receiver.Received.ReadAsync(Stop);
        Assert.Equal("POST", got.Method);
        Assert.Equal(
            ("night-phone", "Priority 1: Furnace 1, overheat", 5, "https://quillmere.example/night/f?t=x", 3),
            ((string?)got.Body!["topic"], (string?)got.Body["title"], (int?)got.Body["priority"], (string?)got.Body["click"], (int?)got.Body["sequence"]));
        Assert.Equal("#3 Furnace 1 is hot.\nhttps://quillmere.example/night/f?t=x", (string?)got.Body["message"]);
        Assert.Equal("\"f/3/ana/push\"", got.Headers["Idempotency-Key"]);
    }

    [Fact]
    public async Task The_token_is_read_from_its_file_at_each_message()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-push-").FullName;
        var file = Path.Combine(folder, "token");
        foreach (var token in new[] { "first", "second" })
        {
            await File.WriteAllTextAsync(file, token + "\n", Stop);
            await Send(tokenFile: "token", folder: folder);
            Assert.Equal($"Bearer {token}", (await receiver.Received.ReadAsync(Stop)).Headers["Authorization"]);
        }
        Directory.Delete(folder, recursive: true);
        Assert.Contains("token", Assert.IsType<SendResult.TryAgain>(await Send(tokenFile: "token", folder: folder)).Why, StringComparison.Ordinal);
    }

    // Which refusals may be mended by waiting: RFC 9110 (408, 5xx), RFC 8470 (425), RFC 6585 (429).
    [Theory, InlineData(408), InlineData(425), InlineData(429), InlineData(500), InlineData(502), InlineData(503)]
    public async Task A_server_that_is_busy_is_asked_again(int status)
    {
        receiver.Status = () => status;
        Assert.True(Assert.IsType<SendResult.TryAgain>(await Send()).HasAnswered);
    }

    [Theory, InlineData(400), InlineData(401), InlineData(403), InlineData(404), InlineData(410), InlineData(413), InlineData(301), InlineData(307)]
    public async Task A_server_that_refuses_is_not_asked_again(int status)
    {
        receiver.Status = () => status;
        Assert.Contains($"{status}", Assert.IsType<SendResult.Refused>(await Send()).Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_hangs_is_given_up_in_real_time()
    {
        receiver.Until = new TaskCompletionSource().Task;
        var late = Assert.IsType<SendResult.TryAgain>(await Send(limit: TimeSpan.FromMilliseconds(200)));
        Assert.False(late.HasAnswered);
        Assert.Contains("within 0.2 s", late.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_asked_again()
    {
        var gone = receiver.Address;
        await receiver.DisposeAsync();
        Assert.False(Assert.IsType<SendResult.TryAgain>(await Send(to: gone)).HasAnswered);
        receiver = await HttpReceiver.Start();
    }

    [Fact]
    public async Task Stopping_the_service_is_no_failure_of_the_server()
    {
        receiver.Until = new TaskCompletionSource().Task;
        using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(100));
        var outlet = new PushOutlet(http, ".", TimeSpan.FromMinutes(1));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => outlet.Send(To(receiver.Address, null), Message, stop.Token));
    }

    static OutgoingMessage Message => new("f/3/ana/push", MessageKind.Call, "f", 3, 1, "Priority 1: Furnace 1, overheat", "#3 Furnace 1 is hot.", new("https://quillmere.example/night/f?t=x"));

    Task<SendResult> Send(Uri? to = null, string? tokenFile = null, string folder = ".", TimeSpan? limit = null) =>
        new PushOutlet(http, folder, limit ?? TimeSpan.FromSeconds(30)).Send(To(to ?? receiver.Address, tokenFile), Message, Stop);

    static OutletAddress To(Uri address, string? tokenFile)
    {
        var options = new OutletOptions { Kind = "push", Url = address.ToString(), Topic = "night-phone", TokenFile = tokenFile };
        return new(TestNight.Person("ana", options), "push", options);
    }
}
