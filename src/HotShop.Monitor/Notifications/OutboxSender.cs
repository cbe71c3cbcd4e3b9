using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <summary>Runs the lanes: wakes at each commit that wrote messages, and when something is to be tried again.</summary>
sealed partial class OutboxSender(
    IReadOnlyList<OutboxLane> lanes, CallOrder order, OutboxBell bell, IStoreWriter writer, HealthBoard board, TimeProvider time, TimeProvider wallClock, ILogger<OutboxSender> log)
    : BackgroundService
{
    /// <summary>A message waiting longer than this is trouble of its own.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(5);

    public IReadOnlyList<OutboxLane> Lanes => lanes;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // First listen, then look: a message committed in between rings.
        var ears = lanes.Select(_ => bell.Listen()).ToList();
        var lost = await writer.Write(scope => Outbox.FailUnknown(scope, order), stoppingToken);
        if (lost > 0) Lost(lost);
        Report();
        await Task.WhenAll(lanes.Select((lane, i) => Run(lane, ears[i], stoppingToken)));
    }

    async Task Run(OutboxLane lane, System.Threading.Channels.ChannelReader<bool> ear, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            TimeSpan? again;
            try
            {
                again = await lane.Step(stop);
                Report();
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested) { return; }
            catch (Exception failure)
            {
                // Most likely the store; it mends or it does not, but this lane must be there when it does.
                LaneFailed(lane.To.Person.Id, lane.To.Outlet, failure);
                board.Report(HealthBoard.Outbox, false, $"the outbox cannot be read or written: {failure.Message}", Now);
                again = BackOff.Longest / 6;
            }
            await Wait(ear, again, stop);
        }
    }

    async Task Wait(System.Threading.Channels.ChannelReader<bool> ear, TimeSpan? longest, CancellationToken stop)
    {
        using var limit = new CancellationTokenSource(longest ?? Timeout.InfiniteTimeSpan, wallClock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, limit.Token);
        try { await ear.ReadAsync(either.Token); }
        catch (OperationCanceledException) { }
    }

    /// <summary>The outbox works while no way to a phone is refused and none has failed for five minutes.</summary>
    internal void Report()
    {
        var nowWall = wallClock.GetUtcNow();
        var troubles = lanes
            .Where(l => l.State.IsRefused || (l.State.FailingSince is { } since && nowWall - since >= LongestWait))
            .Select(l => $"{l.To.Person.Name} by {l.To.Outlet}: {l.State.Problem}").ToList();
        var trying = lanes.Count(l => l.State.FailingSince is not null);
        var detail = troubles.Count > 0 ? string.Join("; ", troubles)
            : trying > 0 ? $"{trying} of {lanes.Count} ways to a phone did not answer, trying again"
            : lanes.Count == 0 ? "nobody is named to be called: write people and notifications.order into the configuration"
            : $"{lanes.Count} ways to a phone, nothing waits";
        board.Report(HealthBoard.Outbox, troubles.Count == 0, detail, Now, isSetUp: lanes.Count > 0);
    }

    Instant Now => time.GetUtcNow().ToInstant();

    [LoggerMessage(Level = LogLevel.Error, Message = "{Count} messages wait for people or ways to a phone that the configuration no longer names; they are marked as failed")]
    partial void Lost(int count);

    [LoggerMessage(Level = LogLevel.Error, Message = "Sending to {Person} by {Outlet} stopped; it goes on in some seconds")]
    partial void LaneFailed(string person, string outlet, Exception failure);
}
