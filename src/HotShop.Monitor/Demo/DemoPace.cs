using HotShop.Simulator;
using HotShop.Simulator.Broker;
using NodaTime;
using ScaledClock = HotShop.Monitor.Loop.ScaledClock;

namespace HotShop.Monitor.Demo;

/// <summary>
/// Holds the demo's clock to what has arrived: it runs ahead of the last moment whose messages are all acknowledged by no more than the service expects between
/// two readings. A slow computer then plays a slower day; without it, half a second of a busy machine is minutes of silence from every sensor, and phones ring.
/// </summary>
sealed class DemoPace(ScaledClock clock, Duration lead, TimeProvider wall)
{
    static readonly TimeSpan Look = TimeSpan.FromMilliseconds(20);

    readonly Lock gate = new();
    (Instant At, long Made) newest, awaited;

    /// <summary>The clock waits shortly after the start until the first readings are in.</summary>
    public void Begin(Instant start)
    {
        newest = awaited = (start, 0);
        clock.WaitAt((start + lead).ToDateTimeOffset());
        clock.Begin();
    }

    /// <summary>The studio has played up to its present moment; from the run's own loop.</summary>
    public void Played(SimulatedStudio studio, SimulatorRun run)
    {
        lock (gate) newest = (studio.Now, run.Acknowledged + run.Refused + run.Waiting);
    }

    public async Task Follow(SimulatorRun run, CancellationToken stop)
    {
        using var look = new PeriodicTimer(Look, wall);
        while (await look.WaitForNextTickAsync(stop))
        {
            if (run.Acknowledged + run.Refused < awaited.Made) continue;
            clock.WaitAt((awaited.At + lead).ToDateTimeOffset());
            lock (gate) awaited = newest;
        }
    }
}
