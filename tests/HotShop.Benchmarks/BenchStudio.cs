using System.Globalization;
using System.Text;
using HotShop.Evaluation;
using HotShop.Monitor;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Benchmarks;

/// <summary>The service's own parts from the message to the row, with alarms, on a store on the disk; its clock is set by hand.</summary>
sealed class BenchStudio : IAsyncDisposable
{
    readonly ServiceProvider services;
    readonly StudioStore store;
    readonly IIntake intake;
    readonly StudioLoop loop;
    readonly HourlyMove move;

    public BenchStudio(string folder, StoreOptions options, Instant start)
    {
        Plan = PlanBuilder.Build(ThirtyChannels.Configuration(folder, options), folder);
        Clock = new HandClock(start);
        store = StudioStore.Open(Plan, isDemo: true);
        var collection = new ServiceCollection();
        collection.AddLogging().AddSingleton(Plan).AddSingleton(new RunChoices(IsDemo: true, Speed: 1)).AddSingleton<TimeProvider>(Clock).AddSingleton(Plan.Channels);
        collection.AddSingleton(store).AddSingleton<IStoreReader>(store).AddSingleton(LoopPace.ForSpeed(1));
        MonitorHost.AddData(collection);
        collection.AddAnnealing().AddAlarms().AddNotifications(Plan, Clock).AddSingleton<StudioLoop>();
        services = collection.BuildServiceProvider();
        (intake, loop, move) = (services.GetRequiredService<IIntake>(), services.GetRequiredService<StudioLoop>(), services.GetRequiredService<HourlyMove>());
        services.GetRequiredService<HealthBoard>().Report(HealthBoard.Broker, true, "messages are handed in directly", start);
    }

    public StudioPlan Plan { get; }

    public HandClock Clock { get; }

    public T The<T>() where T : notnull => services.GetRequiredService<T>();

    public StudioStore Store => store;

    /// <summary>Hands in one timed reading; ends when it is durable.</summary>
    public Task Take(string topic, double value, Instant at)
    {
        var payload = string.Create(CultureInfo.InvariantCulture, $"{{\"value\":{value},\"time\":\"{InstantPattern.ExtendedIso.Format(at)}\"}}");
        return intake.Accept(new IncomingMessage(topic, Encoding.UTF8.GetBytes(payload), Retained: false, Redelivered: false, at, Sender: null), default);
    }

    public Task Tick() => loop.Tick(default);

    public Task Move() => move.Run(Clock.Now, default);

    public void Checkpoint()
    {
        using var connection = store.OpenWriter();
        StudioStore.Run(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        store.Dispose();
    }
}
