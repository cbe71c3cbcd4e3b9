using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>
/// The dull loop: about once a second of the service's clock it lets everybody with a deadline look at the time. Each is a piece of work
/// of its own, most often in one transaction: one that trips undoes nobody else's.
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

    /// <exception cref="StoreException">The store cannot be written.</exception>
    internal async Task Tick(CancellationToken stop)
    {
        var turns = stages.Select(stage => Turn(stage, stop)).ToList();
        var failed = (await Task.WhenAll(turns)).OfType<string>().ToList();
        var detail = failed.Count == 0 ? "turning" : $"{string.Join(", ", failed)} fails at every turn; see the log, and please report it";
        health.Report(HealthBoard.Loop, failed.Count == 0, detail, clock.GetUtcNow().ToInstant());
    }

    /// <returns>The name of a stage that tripped.</returns>
    async Task<string?> Turn(ITickStage stage, CancellationToken stop)
    {
        try
        {
            await writer.Write(scope => { stage.Tick(scope); return true; }, stop);
            return null;
        }
        catch (Exception failure) when (failure is not (StoreException or OperationCanceledException))
        {
            StageFailed(stage.GetType().Name, failure);
            return stage.GetType().Name;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{Stage} failed in this turn of the loop; the others went on")]
    private partial void StageFailed(string stage, Exception failure);

    [LoggerMessage(Level = LogLevel.Error, Message = "A turn of the loop failed; the next one tries again")]
    private partial void TickFailed(Exception failure);
}

/// <summary>Time between two turns of the loop, on the service's clock.</summary>
sealed record LoopPace(TimeSpan Period)
{
    /// <param name="speed">How much faster than real time the service's clock runs; 1 outside demos.</param>
    public static LoopPace ForSpeed(double speed) => new(TimeSpan.FromSeconds(Math.Max(1, speed / 10)));
}
