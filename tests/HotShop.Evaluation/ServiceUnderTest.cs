using System.Text;
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
using HotShop.Simulator;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HotShop.Evaluation;

/// <summary>
/// The service's own code from the message to the row and on, on a store of its own in a temporary folder, without network and web.
/// The configuration is the demo's: it knows of the studio what its owner knows, and nothing that the seed hides.
/// </summary>
sealed class ServiceUnderTest : IAsyncDisposable
{
    /// <summary>A plain folder; in memory where the system has such a place: an evaluation needs no disk's word.</summary>
    static string NewFolder => Directory.CreateDirectory(Path.Combine(
        Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), $"hotshop-evaluation-{Guid.NewGuid():N}")).FullName;

    readonly StudioStore store;
    readonly ServiceProvider services;
    readonly IIntake intake;
    readonly HourlyMove move;
    readonly Upkeep upkeep;
    readonly StudioLoop loop;
    readonly List<Task> underWay = [];
    Instant nextHour, nextDay;

    ServiceUnderTest(StudioPlan plan, HandClock clock)
    {
        (Plan, Clock) = (plan, clock);
        store = StudioStore.Open(plan, isDemo: true);
        var collection = new ServiceCollection();
        collection.AddLogging(log => log.AddProvider(new ErrorsCounted(this)));
        collection.AddSingleton(plan).AddSingleton(new RunChoices(IsDemo: true, Speed: 1)).AddSingleton<TimeProvider>(clock).AddSingleton(plan.Channels);
        collection.AddSingleton(store).AddSingleton<IStoreReader>(store).AddSingleton(LoopPace.ForSpeed(1));
        MonitorHost.AddData(collection);
        // What is to be called waits in the outbox: nobody sends it here.
        collection.AddAnnealing().AddAlarms().AddNotifications(plan, clock);
        collection.AddSingleton<StudioLoop>();
        services = collection.BuildServiceProvider();
        intake = services.GetRequiredService<IIntake>();
        (move, upkeep, loop) = (services.GetRequiredService<HourlyMove>(), services.GetRequiredService<Upkeep>(), services.GetRequiredService<StudioLoop>());
        services.GetRequiredService<HealthBoard>().Report(HealthBoard.Broker, true, "messages are handed in directly", clock.Now);
        (nextHour, nextDay) = (clock.Now + Duration.FromHours(1), clock.Now + Duration.FromDays(1));
    }

    public static ServiceUnderTest Start(Instant at, int sampleSeconds, Func<StudioConfiguration, StudioConfiguration>? change = null)
    {
        var folder = NewFolder;
        var written = change is null ? DemoConfiguration.Read() : change(DemoConfiguration.Read());
        var configuration = written with
        {
            DataDirectory = folder,
            Store = written.Store with { BallastMebibytes = 1, RawDays = 7 },
            Appliances = [.. written.Appliances.Select(a => a with { Channels = [.. a.Channels.Select(c => c with { IntervalSeconds = Math.Max(c.IntervalSeconds, sampleSeconds) })] })],
        };
        return new ServiceUnderTest(PlanBuilder.Build(configuration, folder), new HandClock(at));
    }

    public StudioPlan Plan { get; }

    public HandClock Clock { get; }

    /// <summary>What the service logged as error; must stay 0.</summary>
    public int Errors { get; private set; }

    public T The<T>() where T : notnull => services.GetRequiredService<T>();

    /// <summary>Lets the service live through the messages up to a time: intake, a turn of the loop, and what is due each hour and night.</summary>
    public async Task Live(IReadOnlyList<DeviceMessage> messages, Instant to)
    {
        Clock.Now = to;
        foreach (var message in messages)
            underWay.Add(intake.Accept(new IncomingMessage(message.Topic, Encoding.UTF8.GetBytes(message.Payload), message.Retain, Redelivered: false, message.At, message.Device), default));
        underWay.Add(loop.Tick(default));
        await Task.WhenAll(underWay);
        underWay.Clear();
        if (to >= nextHour)
        {
            nextHour += Duration.FromHours(1);
            await move.Run(to, default);
        }
        if (to < nextDay) return;
        nextDay += Duration.FromDays(1);
        await upkeep.Run(to, default);
    }

    public IReadOnlyDictionary<string, long> Counts => Counters.Read(store);

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        store.Dispose();
        Directory.Delete(Plan.DataDirectory, recursive: true);
    }

    sealed class ErrorsCounted(ServiceUnderTest service) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (!IsEnabled(logLevel)) return;
            service.Errors++;
            Console.Error.WriteLine(formatter(state, exception) + exception);
        }

        public void Dispose() { }
    }
}
