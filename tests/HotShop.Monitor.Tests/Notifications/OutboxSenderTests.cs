using System.Threading.Channels;
using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class OutboxSenderTests : IDisposable
{
    readonly TestNight night = new();

    public void Dispose() => night.Dispose();

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_committed_message_leaves_at_once_without_the_clock_moving()
    {
        var outlet = new WaitingOutlet();
        using var sender = Sender(outlet);
        await sender.StartAsync(Stop);
        await night.Overheat();
        Assert.Equal(1, (await outlet.Taken.Reader.ReadAsync(Stop)).Step);
        await sender.StopAsync(Stop);
    }

    [Fact]
    public async Task Messages_left_by_a_killed_process_leave_when_the_service_starts()
    {
        await night.Overheat();
        night.Restart();
        var outlet = new WaitingOutlet();
        using var sender = Sender(outlet);
        await sender.StartAsync(Stop);
        Assert.Equal(1, (await outlet.Taken.Reader.ReadAsync(Stop)).Step);
        await sender.StopAsync(Stop);
    }

    [Fact]
    public async Task A_way_that_hangs_does_not_delay_the_others()
    {
        var outlet = new WaitingOutlet { Hangs = "ana" };
        using var sender = Sender(outlet);
        await sender.StartAsync(Stop);
        var id = await night.Overheat();
        await night.Store.Write(scope => { night.Desk.WakeNext(id, scope); });
        Assert.Equal("ben", (await outlet.Taken.Reader.ReadAsync(Stop)).Key.Split('/')[2]);
        await sender.StopAsync(Stop);
    }

    [Fact]
    public async Task Messages_for_somebody_no_longer_named_are_failed_with_the_reason()
    {
        await night.Store.Write(scope =>
        {
            var gone = new OutletAddress(TestNight.Person("zoe"), "push", TestNight.Person("zoe").Outlets[0]);
            Outbox.Add(scope, MessageKind.Call, "old", 1, gone, 1, "FirstTime", "t", "m");
        });
        var outlet = new WaitingOutlet();
        using var sender = Sender(outlet);
        await sender.StartAsync(Stop);
        await night.Overheat();
        await outlet.Taken.Reader.ReadAsync(Stop);
        await sender.StopAsync(Stop);
        Assert.Equal(1, night.Store.Count("SELECT count(*) FROM outbox WHERE state = 'failed' AND last_error LIKE '%no longer names%'"));
    }

    [Fact]
    public async Task A_way_that_fails_for_five_minutes_is_trouble_and_stops_the_ping_and_recovers()
    {
        var outlet = new WaitingOutlet { Refuses = true };
        using var sender = Sender(outlet);
        await night.Overheat();
        await sender.Lanes[0].Step(Stop);
        sender.Report();
        Assert.True(night.Board.IsWorking(HealthBoard.Outbox));
        night.Time.Advance(TimeSpan.FromMinutes(5));
        sender.Report();
        Assert.False(night.Board.IsWorking(HealthBoard.Outbox));
        Assert.Contains("Ana by push: busy", night.Board.Of(HealthBoard.Outbox)!.Detail, StringComparison.Ordinal);
        outlet.Refuses = false;
        await sender.Lanes[0].Step(Stop);
        sender.Report();
        Assert.True(night.Board.IsWorking(HealthBoard.Outbox));
    }

    OutboxSender Sender(IOutlet outlet)
    {
        var lanes = night.Order.Outlets.Select(o => new OutboxLane(o, outlet, night.Desk, night.Links, night.Store, night.Store, night.Time, () => 1, NullLogger.Instance)).ToList();
        return new(lanes, night.Order, night.Bell, night.Store, night.Board, night.Time, night.Time, NullLogger<OutboxSender>.Instance);
    }

    sealed class WaitingOutlet : IOutlet
    {
        public Channel<OutgoingMessage> Taken { get; } = Channel.CreateUnbounded<OutgoingMessage>();

        public string? Hangs { get; init; }

        public bool Refuses { get; set; }

        public async Task<SendResult> Send(OutletAddress to, OutgoingMessage message, CancellationToken stop)
        {
            if (to.Person.Id == Hangs) await Task.Delay(Timeout.InfiniteTimeSpan, new FakeTimeProvider(), stop);
            if (Refuses) return new SendResult.TryAgain("busy", HasAnswered: true);
            Taken.Writer.TryWrite(message);
            return new SendResult.Accepted("taken");
        }
    }
}
