using System.Globalization;
using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Health;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Tests.Support;

/// <summary>
/// A studio's store in a folder of its own with all that reads and writes it, in this process: no broker, no pages, and a clock that the test moves.
/// </summary>
sealed class OpenStudio : IAsyncDisposable
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8, 0);

    readonly Action<IServiceCollection>? more;
    StudioStore store;
    ServiceProvider services;

    OpenStudio(StudioPlan plan, Instant now, Action<IServiceCollection>? more)
    {
        (Plan, this.more) = (plan, more);
        Clock = new FakeTimeProvider(now.ToDateTimeOffset());
        (store, services) = Build();
    }

    public static OpenStudio Open(StudioConfiguration? configuration = null, Instant? now = null, Action<IServiceCollection>? more = null)
    {
        var folder = NewFolder();
        return new OpenStudio(PlanBuilder.Build((configuration ?? SomeStudio.Configuration) with { DataDirectory = folder }, folder), now ?? Start, more);
    }

    /// <summary>In memory where the system has such a place: these tests need no disk's word.</summary>
    static string NewFolder() => Directory.CreateDirectory(Path.Combine(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), $"hotshop-studio-{Guid.NewGuid():N}")).FullName;

    public StudioPlan Plan { get; private set; }

    public FakeTimeProvider Clock { get; private set; }

    public Instant Now
    {
        get => Instant.FromDateTimeOffset(Clock.GetUtcNow());
        set => Clock.SetUtcNow(value.ToDateTimeOffset());
    }

    /// <summary>What was logged as an error; most tests want none.</summary>
    public List<string> Errors { get; } = [];

    public StudioStore Store => store;
    public IStoreWriter Writer => The<IStoreWriter>();
    public IReadingHistory History => The<IReadingHistory>();
    public LogbookBook Logbook => The<LogbookBook>();
    public HealthBoard Health => The<HealthBoard>();

    public T The<T>() where T : notnull => services.GetRequiredService<T>();

    public ChannelPlan Channel(string id) => Plan.Channels.Find(id)!;

    (StudioStore, ServiceProvider) Build()
    {
        var opened = StudioStore.Open(Plan, isDemo: false);
        ConfigurationRows.Keep(opened, Plan, Now);
        var collection = new ServiceCollection();
        collection.AddLogging(log => log.AddProvider(new ErrorLog(Errors)));
        collection.AddSingleton(Plan).AddSingleton(new RunChoices(IsDemo: false, Speed: 1)).AddSingleton<TimeProvider>(Clock).AddSingleton(Plan.Channels);
        collection.AddSingleton(opened).AddSingleton<IStoreReader>(opened).AddSingleton(LoopPace.ForSpeed(1));
        MonitorHost.AddData(collection);
        collection.AddSingleton<StudioLoop>().AddSingleton<HealthAnswers>().AddSingleton<ApplianceAnswers>();
        more?.Invoke(collection);
        return (opened, collection.BuildServiceProvider());
    }

    async Task Close()
    {
        await services.DisposeAsync();
        store.Dispose();
    }

    /// <summary>Stops and starts again on the same folder; with another configuration, its owner changed it meanwhile.</summary>
    public async Task Restart(StudioConfiguration? configuration = null)
    {
        await Close();
        if (configuration is not null) Plan = PlanBuilder.Build(configuration with { DataDirectory = Plan.DataDirectory }, Plan.DataDirectory);
        (store, services) = Build();
    }

    /// <summary>A message as a device sends it, on a channel such as <c>furnace-1/crown</c> or <c>furnace-1/log</c>.</summary>
    public Task Send(string channel, string payload, bool retained = false, Instant? arrived = null) => The<IIntake>().Accept(
        new IncomingMessage($"hotshop/quillmere/{channel}", Encoding.UTF8.GetBytes(payload), retained, Redelivered: false, arrived ?? Now, Sender: "test"), default);

    /// <summary>Timed readings, each arriving at its own time and in this order; the clock is moved to the last of them.</summary>
    public async Task Send(string channel, params IEnumerable<(Instant At, double Value)> readings)
    {
        var list = readings.ToList();
        await Task.WhenAll(list.Select(r => Send(channel, Timed(r.Value, r.At), arrived: r.At)));
        if (list.Count > 0 && list.Max(r => r.At) is var last && last > Now) Now = last;
    }

    public static string Timed(double value, Instant at) =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"value":{{value:R}},"time":"{{InstantPattern.ExtendedIso.Format(at)}}"}""");

    public Task Tick() => The<StudioLoop>().Tick(default);

    public Task<int> Move() => The<HourlyMove>().Run(Now, default);

    public Task<long> LetGo() => The<Upkeep>().Run(Now, default);

    public IReadOnlyDictionary<string, long> Counters => HotShop.Monitor.Store.Counters.Read(store);

    public long Count(string counter) => Counters.GetValueOrDefault(counter);

    public IReadOnlyList<RefusedMessage> Refused => RefusedList.Newest(store, 10_000);

    public IReadOnlyList<HourRow> Hours(string channel, Instant? from = null, Instant? to = null) => History.Hours(Channel(channel), from ?? Start - Duration.FromDays(200), to ?? Now + Duration.FromDays(2));

    public IReadOnlyList<(Instant At, double Value)> Raw(string channel) =>
        [.. History.Raw(Channel(channel), Start - Duration.FromDays(400), Now + Duration.FromDays(1), 1_000_000).Select(s => (s.At, s.Value))];

    public FuelUse Fuel(string appliance, Instant from, Instant to) => The<FuelBook>().Between(Plan.Appliance(appliance)!, from, to, Now);

    public PotReport Pot(Instant? at = null) => The<PotBook>().At("furnace-1", at ?? Now)!;

    public long Scalar(string sql)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    public async ValueTask DisposeAsync()
    {
        await Close();
        Directory.Delete(Plan.DataDirectory, recursive: true);
    }

    sealed class ErrorLog(List<string> errors) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;
        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;
        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;
        public void Dispose() { }

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel)) lock (errors) errors.Add($"{formatter(state, exception)} {exception}");
        }
    }
}
