using System.Globalization;
using HotShop.Monitor.Health;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <summary>
/// Once a minute asks an address of the owner's choice, only while all that an alarm needs on its way is working.
/// Whoever watches that address, elsewhere and on other power, notices a dead box, router or mains by the silence.
/// </summary>
sealed partial class Ping(
    Uri? address, HttpMessageInvoker http, HealthBoard board, TickPulse pulse, TimeProvider time, TimeProvider wallClock, ILogger<Ping> log) : BackgroundService
{
    public const string Part = "ping";
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(1), LongestSilence = TimeSpan.FromSeconds(30);
    static readonly TimeSpan TimeLimit = TimeSpan.FromSeconds(10);
    static readonly string[] needed = [HealthBoard.Loop, HealthBoard.Broker, HealthBoard.Store, HealthBoard.Outbox];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (address is null)
        {
            Tell(true, "no pingUrl is configured: nobody outside would notice that this computer is dead");
            return;
        }
        using var tick = new PeriodicTimer(Every, wallClock);
        try
        {
            while (await tick.WaitForNextTickAsync(stoppingToken)) await Once(stoppingToken);
        }
        catch (OperationCanceledException) { }
    }

    /// <returns>True when the address was asked and answered.</returns>
    internal async Task<bool> Once(CancellationToken stop)
    {
        if (Obstacle() is { } obstacle)
        {
            Tell(false, $"withheld, because {obstacle}");
            Withheld(obstacle);
            return false;
        }
        var failure = await Ask(stop);
        Tell(failure is null, failure ?? $"answered at {wallClock.GetUtcNow().ToString("HH:mm 'UTC'", CultureInfo.InvariantCulture)}");
        if (failure is not null) NoAnswer(failure);
        return failure is null;
    }

    /// <summary>What speaks against saying that the service is alive; null when nothing does. A part that never reported is not known to work.</summary>
    internal string? Obstacle()
    {
        foreach (var part in needed)
            if (!board.IsWorking(part)) return $"the {part} is not working: {board.Of(part)?.Detail ?? "it has not reported yet"}";
        if (board.Of(HealthBoard.Disk) is { IsWorking: false } disk) return $"the disk is in trouble: {disk.Detail}";
        return pulse.Age > LongestSilence ? string.Create(CultureInfo.InvariantCulture, $"the loop has been silent for {pulse.Age.TotalSeconds:0} s") : null;
    }

    async Task<string?> Ask(CancellationToken stop)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(TimeLimit);
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, address);
            using var answer = await http.SendAsync(request, limit.Token);
            return answer.IsSuccessStatusCode ? null : $"the watcher answered {(int)answer.StatusCode}";
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return "the watcher did not answer";
        }
        catch (HttpRequestException failure)
        {
            return $"the watcher could not be reached: {failure.Message}";
        }
    }

    void Tell(bool isWorking, string detail) => board.Report(Part, isWorking, detail, time.GetUtcNow().ToInstant(), isSetUp: address is not null);

    [LoggerMessage(Level = LogLevel.Warning, Message = "No ping this minute, because {Obstacle}")]
    partial void Withheld(string obstacle);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The ping failed: {Failure}")]
    partial void NoAnswer(string failure);
}
