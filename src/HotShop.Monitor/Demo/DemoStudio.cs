using System.Net;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Loop;
using HotShop.Simulator;
using HotShop.Simulator.Faults;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Demo;

/// <summary>Plays the simulated studio against the service's own broker, over TCP like any studio's devices.</summary>
sealed partial class DemoStudio(DemoChoices choices, StudioPlan plan, TimeProvider clock, DemoClocks clocks, ILogger<DemoStudio> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        // Only now: everything that listens has started, and the first readings are not minutes late by the fast clock.
        clocks.Studio.Begin();
        var start = clock.GetUtcNow().ToInstant();
        var scenario = Scenarios.Named(choices.Scenario, start, plan.Zone)!;
        var studio = new SimulatedStudio(new SimulationOptions
        {
            Seed = choices.Seed, Start = start, Zone = plan.Zone, SampleSeconds = DemoPlan.SampleSeconds(choices.Speed), Faults = scenario.Faults,
        });
        var broker = IPEndPoint.Parse(plan.Configuration.Broker.Listen);
        try
        {
            await new Simulator.Broker.SimulatorRun(studio, new Simulator.Broker.BrokerAddress(broker.Address.ToString(), broker.Port), clock, clocks.Wall, log).RunAsync(null, stopping);
        }
        catch (OperationCanceledException)
        {
            Closed();
        }
    }

    [LoggerMessage(Level = LogLevel.Debug, Message = "The simulated studio has closed")]
    private partial void Closed();
}

/// <summary>The wall's clock and the studio's.</summary>
sealed record DemoClocks(TimeProvider Wall, ScaledClock Studio);
