using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime.Extensions;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class PingTests : IAsyncLifetime
{
    readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 3, 1, 2, 0, 0, TimeSpan.Zero));
    readonly HttpMessageInvoker http = new(new SocketsHttpHandler { AllowAutoRedirect = false });
    readonly HealthBoard board = new();
    TickPulse pulse = null!;
    HttpReceiver watcher = null!;
    Ping ping = null!;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        watcher = await HttpReceiver.Start();
        pulse = new(time);
        ping = new(new Uri(watcher.Address, "/alive/studio"), http, board, pulse, time, time, NullLogger<Ping>.Instance);
        foreach (var part in new[] { HealthBoard.Loop, HealthBoard.Broker, HealthBoard.Store, HealthBoard.Outbox }) Report(part, true);
    }

    public async ValueTask DisposeAsync()
    {
        ping.Dispose();
        http.Dispose();
        await watcher.DisposeAsync();
    }

    [Fact]
    public async Task While_everything_works_the_watcher_hears_of_it()
    {
        Assert.True(await ping.Once(Stop));
        var heard = await watcher.Received.ReadAsync(Stop);
        Assert.Equal(("GET", "/alive/studio"), (heard.Method, heard.Path));
        Assert.Equal("answered at 02:00 UTC", board.Of(Ping.Part)!.Detail);
    }

    [Theory, InlineData(HealthBoard.Store), InlineData(HealthBoard.Broker), InlineData(HealthBoard.Loop), InlineData(HealthBoard.Outbox), InlineData(HealthBoard.Disk)]
    public async Task The_ping_stops_when_a_part_is_broken_and_goes_on_when_it_is_mended(string part)
    {
        Report(part, false);
        Assert.False(await ping.Once(Stop));
        Assert.Empty(watcher.Drain());
        Assert.Contains(part, board.Of(Ping.Part)!.Detail, StringComparison.Ordinal);
        Report(part, true);
        Assert.True(await ping.Once(Stop));
        Assert.Single(watcher.Drain());
    }

    [Fact]
    public async Task A_part_that_never_reported_is_not_taken_for_working()
    {
        var silent = new Ping(watcher.Address, http, new HealthBoard(), pulse, time, time, NullLogger<Ping>.Instance);
        Assert.False(await silent.Once(Stop));
        Assert.Empty(watcher.Drain());
    }

    [Fact]
    public async Task A_loop_that_hangs_reports_nothing_and_so_stops_the_ping()
    {
        time.Advance(TimeSpan.FromSeconds(31));
        Assert.False(await ping.Once(Stop));
        pulse.Beat();
        Assert.True(await ping.Once(Stop));
    }

    [Fact]
    public async Task A_watcher_that_does_not_answer_is_shown_and_breaks_nothing()
    {
        watcher.Status = () => 500;
        Assert.False(await ping.Once(Stop));
        Assert.Contains("500", board.Of(Ping.Part)!.Detail, StringComparison.Ordinal);
        await watcher.DisposeAsync();
        Assert.False(await ping.Once(Stop));
        Assert.Contains("could not be reached", board.Of(Ping.Part)!.Detail, StringComparison.Ordinal);
        watcher = await HttpReceiver.Start();
    }

    void Report(string part, bool isWorking) => board.Report(part, isWorking, isWorking ? "well" : "broken", time.GetUtcNow().ToInstant());
}
