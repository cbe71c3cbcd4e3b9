using HotShop.Simulator.People;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HotShop.Simulator.Broker;

/// <summary>
/// Plays a studio against a broker over TCP: one client a device, all devices at once, every message until acknowledged.
/// A slow or missing broker loses nothing: the studio waits when too much is waiting, and catches up.
/// </summary>
/// <param name="clock">The studio's time, which may run faster than the wall's.</param>
/// <param name="wall">Real time, for pauses between steps and attempts.</param>
public sealed class SimulatorRun(SimulatedStudio studio, BrokerAddress broker, TimeProvider clock, TimeProvider wall, ILogger log)
{
    // One beat must be short against the time between two samples even at speed 600.
    static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(50);

    const int MostWaiting = 20_000;

    readonly Dictionary<string, DeviceConnection> connections = Quillmere.Appliances.Select(Quillmere.DeviceOf).Append(Logbook.Device)
        .ToDictionary(device => device, device => new DeviceConnection(device, broker, wall, log));

    /// <summary>Called after every step that moved the studio, from the run's own loop: the place to write the truth down.</summary>
    public Action<SimulatedStudio>? Advanced { get; init; }

    public long Acknowledged => connections.Values.Sum(c => c.Acknowledged);

    public long Refused => connections.Values.Sum(c => c.Refused);

    /// <summary>Messages made and not yet acknowledged.</summary>
    public int Waiting => connections.Values.Sum(c => c.Waiting);

    /// <summary>
    /// Runs until stopped, or until the studio's time has come to <paramref name="until"/> and everything is acknowledged.
    /// </summary>
    /// <exception cref="OperationCanceledException">Stopped by <paramref name="stop"/>.</exception>
    public async Task RunAsync(Instant? until, CancellationToken stop)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var senders = connections.Values.Select(c => c.RunAsync(end.Token)).ToArray();
        try
        {
            await PlayAsync(until ?? Instant.MaxValue, end.Token);
            foreach (var connection in connections.Values) connection.Complete();
            await Task.WhenAll(senders);
        }
        finally
        {
            await end.CancelAsync();
            await Task.WhenAll(senders).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    async Task PlayAsync(Instant until, CancellationToken stop)
    {
        using var beat = new PeriodicTimer(Beat, wall);
        do
        {
            var now = Instant.Min(until, Instant.FromDateTimeOffset(clock.GetUtcNow()));

            // In pieces of a minute, so that a jump of the clock does not make a mountain of messages at once.
            while (studio.Now < now && Waiting < MostWaiting)
            {
                stop.ThrowIfCancellationRequested();
                var before = studio.Now;
                foreach (var message in studio.Advance(Instant.Min(now, before + Duration.FromMinutes(1)))) connections[message.Device].Enqueue(message);
                if (studio.Now == before) break;
                Advanced?.Invoke(studio);
            }
        }
        while (studio.Now + Duration.FromSeconds(2) <= until && await beat.WaitForNextTickAsync(stop));
    }
}
