using System.Net;
using HotShop.Monitor.Configuration;
using HotShop.Simulator;
using HotShop.Simulator.Broker;
using HotShop.Simulator.Faults;
using NodaTime;
using NodaTime.Extensions;
using ScaledClock = HotShop.Monitor.Loop.ScaledClock;

namespace HotShop.Monitor.Demo;

/// <summary>Plays the simulated studio against the service's own broker, over TCP like any studio's devices.</summary>
sealed partial class DemoStudio(DemoChoices choices, StudioPlan plan, TimeProvider clock, DemoClocks clocks, ILogger<DemoStudio> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        // Only now does the clock begin: everything that listens has started, and the first readings are not minutes late by the fast clock.
        var start = clock.GetUtcNow().ToInstant();
        var pace = new DemoPace(clocks.Studio, Duration.FromSeconds(DemoPlan.ExpectedSeconds(choices.Speed)), clocks.Wall);
        pace.Begin(start);
        var scenario = Scenarios.Named(choices.Scenario, start, plan.Zone)!;
        var studio = new SimulatedStudio(new SimulationOptions
        {
            Seed = choices.Seed, Start = start, Zone = plan.Zone, SampleSeconds = DemoPlan.SampleSeconds(choices.Speed), Faults = scenario.Faults,
        });
        var broker = IPEndPoint.Parse(plan.Configuration.Broker.Listen);
        try
        {
            SimulatorRun? run = null;
            run = new SimulatorRun(studio, new BrokerAddress(broker.Address.ToString(), broker.Port), clock, clocks.Wall, log) { Advanced = played => pace.Played(played, run!) };
            await Task.WhenAll(run.RunAsync(null, stopping), pace.Follow(run, stopping));
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
