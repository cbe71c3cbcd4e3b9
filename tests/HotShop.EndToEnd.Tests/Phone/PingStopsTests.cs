using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Notifications;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>Whoever watches the ping notices by its absence that alarms can no longer come. Here both clocks are moved by hand, each part is broken for real.</summary>
public sealed class PingStopsTests
{
    [Fact]
    public Task The_ping_comes_every_minute_and_stops_when_the_loop_stops() => Watched(async (studio, wall, watcher) =>
    {
        for (var minute = 0; minute < 3; minute++) await Pinged(studio, wall, watcher);
        // The service's clock stands still now: no turn of the loop, as if it hung.
        wall.Advance(Ping.Every);
        await Withheld(studio, watcher, "the loop has been silent");
    });

    [Fact]
    public Task The_ping_stops_when_another_program_holds_the_store_and_comes_back_when_it_lets_go() => Watched(async (studio, wall, watcher) =>
    {
        await Pinged(studio, wall, watcher);
        await using (var other = new SqliteConnection($"Data Source={studio.Services.GetRequiredService<StudioStore>().Path};Pooling=False"))
        {
            await other.OpenAsync(TestContext.Current.CancellationToken);
            Run(other, "BEGIN IMMEDIATE");
            studio.Clock.Advance(TimeSpan.FromSeconds(1));
            await Patience.Until(() => !studio.Health.IsWorking(HealthBoard.Store), "the store notices that it cannot write");
            wall.Advance(Ping.Every);
            await Withheld(studio, watcher, "the store is not working");
            Run(other, "ROLLBACK");
        }
        await Pinged(studio, wall, watcher);
    }, isBrokerUp: true, "A commit of", "A turn of the loop failed", "could not be stored", "cannot be stored");

    [Fact]
    public Task The_ping_does_not_come_while_the_broker_cannot_listen_and_begins_when_it_can() => Watched(async (studio, wall, watcher) =>
    {
        await Patience.Until(() => studio.Health.Of(HealthBoard.Broker) is { IsWorking: false }, "the broker cannot listen");
        await Beat(studio);
        wall.Advance(Ping.Every);
        await Withheld(studio, watcher, "the broker is not working");
        studio.FreeBrokerPort();
        await Patience.Until(() => { studio.Clock.Advance(TimeSpan.FromSeconds(10)); return studio.Health.IsWorking(HealthBoard.Broker); }, "the broker listens once its port is free");
        await Pinged(studio, wall, watcher);
    }, isBrokerUp: false, "The broker cannot listen");

    static async Task Watched(Func<NightStudio, FakeTimeProvider, HttpReceiver, Task> story, bool isBrokerUp = true, params string[] expectedErrors)
    {
        await using var watcher = await HttpReceiver.Start();
        var wall = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 1, 0, 0, TimeSpan.Zero));
        await NightStudio.Play(studio => story(studio, wall, watcher),
            c => c with { Notifications = c.Notifications with { PingUrl = watcher.Address.ToString() } }, wall, isBrokerUp, expectedErrors);
    }

    /// <summary>A minute in which all is well: the loop turns, and the watcher is asked once.</summary>
    static async Task Pinged(NightStudio studio, FakeTimeProvider wall, HttpReceiver watcher)
    {
        wall.Advance(Ping.Every - TimeSpan.FromSeconds(1));
        await Beat(studio);
        wall.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("GET", (await Patience.For(watcher.Received.ReadAsync(TestContext.Current.CancellationToken).AsTask())).Method);
        Assert.False(watcher.Received.TryPeek(out _));
    }

    static async Task Beat(NightStudio studio)
    {
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        await Patience.Until(() => studio.Services.GetRequiredService<TickPulse>().Age < TimeSpan.FromSeconds(1), "the loop turns");
    }

    static async Task Withheld(NightStudio studio, HttpReceiver watcher, string why)
    {
        await Patience.Until(() => studio.Health.Of(Ping.Part)?.Detail.Contains(why, StringComparison.Ordinal) == true,
            () => $"the ping is withheld because {why}; it says '{studio.Health.Of(Ping.Part)?.Detail}'");
        Assert.False(watcher.Received.TryPeek(out _));
    }

    static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
