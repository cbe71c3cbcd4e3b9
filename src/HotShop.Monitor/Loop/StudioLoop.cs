using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>
/// The dull loop: about once a second of the service's clock it lets everybody with a deadline look at the time, inside one transaction.
/// In a fast demo a tick covers more than a second; it never comes more often than ten times a real second.
/// </summary>
sealed partial class StudioLoop(IStoreWriter writer, IEnumerable<ITickStage> stages, HealthBoard health, TimeProvider clock, LoopPace pace, ILogger<StudioLoop> log) : BackgroundService
{
    readonly IReadOnlyList<ITickStage> stages = [.. stages];

    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(pace.Period, clock);
        do
        {
            try
            {
                await Tick(stopping);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // The store says itself what is wrong; the loop goes on, so that it notices when it is mended.
                TickFailed(failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stopping));
    }

    internal Task Tick(CancellationToken stop) => writer.Write(scope =>
    {
        foreach (var stage in stages) stage.Tick(scope);
        scope.OnCommit(() => health.Report(HealthBoard.Loop, true, "turning", clock.GetUtcNow().ToInstant()));
        return true;
    }, stop);

    [LoggerMessage(Level = LogLevel.Error, Message = "A turn of the loop failed; the next one tries again")]
    private partial void TickFailed(Exception failure);
}

/// <summary>Time between two turns of the loop, on the service's clock.</summary>
sealed record LoopPace(TimeSpan Period)
{
    /// <param name="speed">How much faster than real time the service's clock runs; 1 outside demos.</param>
    public static LoopPace ForSpeed(double speed) => new(TimeSpan.FromSeconds(Math.Max(1, speed / 10)));
}
