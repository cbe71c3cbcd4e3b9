using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Tests.Broker;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace HotShop.EndToEnd.Tests.Broker;

/// <summary>The service's side of an outside broker in front of a fake store. Its waits run twenty times faster; the network's time-outs do not.</summary>
sealed class OutsideStudio : IAsyncDisposable
{
    OutsideStudio(StudioPlan plan, FakeIntake intake)
    {
        Intake = intake;
        var clock = new ScaledClock(new RealClock(), 20, new DateTimeOffset(2026, 3, 1, 2, 0, 0, TimeSpan.Zero));
        Broker = new OutsideBroker(plan, Intake, Health, Counters, clock, NullLogger<OutsideBroker>.Instance);
    }

    public FakeIntake Intake { get; }
    public HealthBoard Health { get; } = new();
    public BrokerCounters Counters { get; } = new();
    public OutsideBroker Broker { get; }

    public PartHealth State => Health.Of(HealthBoard.Broker)!;

    public static async Task<OutsideStudio> Start(Mosquitto mosquitto, string? options = null, FakeIntake? intake = null)
    {
        var studio = new OutsideStudio(SomePlan.With(options ?? mosquitto.Options(), mosquitto.Folder), intake ?? new FakeIntake());
        await studio.Broker.StartAsync(TestContext.Current.CancellationToken);
        return studio;
    }

    public static async Task<OutsideStudio> StartWorking(Mosquitto mosquitto, string? options = null, FakeIntake? intake = null)
    {
        var studio = await Start(mosquitto, options, intake);
        await studio.Working();
        return studio;
    }

    public Task Working() => Patience.Until(() => State.IsWorking, () => $"the broker part works; it says '{State.Detail}'");

    public Task Trouble(string detail) =>
        Patience.Until(() => !State.IsWorking && State.Detail.Contains(detail, StringComparison.Ordinal), () => $"trouble with '{detail}'; it says '{State.Detail}'");

    public Task Stored(int messages) => Patience.Until(() => Intake.Accepted.Count >= messages, () => $"{messages} messages stored; there are {Intake.Accepted.Count}");

    public async ValueTask DisposeAsync()
    {
        // Stopped before held calls are let go: a store that never answered must not be acknowledged on the way out.
        await Broker.StopAsync(CancellationToken.None);
        Intake.Release();
        Broker.Dispose();
        Counters.Dispose();
    }
}
