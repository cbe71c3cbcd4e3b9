using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>Runs the hourly move whenever hours have ended: looks every minute of the service's clock.</summary>
sealed partial class RollupLoop(HourlyMove move, TimeProvider clock, LoopPace pace, ILogger<RollupLoop> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(Math.Max(60, pace.Period.TotalSeconds)), clock);
        do
        {
            try
            {
                await move.Run(clock.GetUtcNow().ToInstant(), stopping);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                Postponed(failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stopping));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The hourly move was put off; it goes on where it stopped")]
    private partial void Postponed(Exception failure);
}
