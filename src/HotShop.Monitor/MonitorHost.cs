using System.Globalization;
using System.Net;
using System.Text.Json.Serialization;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Fuel.Flue;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Health;
using HotShop.Monitor.History;
using HotShop.Monitor.History.Local;
using HotShop.Monitor.Http;
using HotShop.Monitor.Live;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Money;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Mail;
using HotShop.Monitor.Store;
using HotShop.Monitor.Sums;
using HotShop.Monitor.Web;
using HotShop.Monitor.Web.Access;
using HotShop.Monitor.Web.Offline;
using HotShop.Monitor.Web.Pages;
using HotShop.Monitor.Wire;
using HotShop.Monitor.Wiring;
using NodaTime.Extensions;
using OpenTelemetry.Metrics;
using Serilog;
using Serilog.Events;

namespace HotShop.Monitor;

/// <summary>Puts the service together: the only place that knows all folders.</summary>
public static partial class MonitorHost
{
    /// <param name="plan">Checked.</param>
    /// <param name="realClock">The wall's clock, for network time-outs and pages.</param>
    /// <param name="clock">The service's clock; faster than the wall's in a demo.</param>
    /// <param name="more">What a command adds, e.g. the demo's studio; what it adds comes after, so it takes the place of ours.</param>
    /// <exception cref="StoreException">The store cannot be used; one line says why.</exception>
    public static WebApplication Build(StudioPlan plan, RunChoices run, TimeProvider realClock, TimeProvider clock, Action<WebApplicationBuilder>? more = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
            ApplicationName = typeof(MonitorHost).Assembly.GetName().Name,
        });
        builder.Configuration.Sources.Clear();
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 1 << 20;
            kestrel.Listen(IPEndPoint.Parse(plan.Configuration.Http.Listen));
        });
        Logging(builder, plan);

        var store = StudioStore.Open(plan, run.IsDemo);
        ConfigurationRows.Keep(store, plan, clock.GetUtcNow().ToInstant());
        var services = builder.Services;
        services.AddSingleton(plan).AddSingleton(run).AddSingleton(clock).AddSingleton(plan.Channels);
        // By a maker, so that the container closes it at the end, after the writer: the next start needs the lock.
        services.AddSingleton(_ => store).AddSingleton<IStoreReader>(store);
        services.AddSingleton(LoopPace.ForSpeed(run.Speed));
        AddData(services);
        AddWeb(services, realClock);
        services.AddAnnealing().AddAlarms(run.Speed);
        services.AddNotifications(plan, realClock);
        services.AddHandover();
        services.AddSums();
        services.AddAccess(new AccessOptions(plan.DataDirectory, plan.Configuration.Http, IsOpen: run.IsDemo), realClock);
        services.AddSingleton<ReportRound>();
        services.AddCalendarJobs(plan, clock);
        // What takes messages in is started last and stopped first.
        services.AddHostedService<StudioLoop>().AddHostedService<RollupLoop>();
        services.AddHistory().AddLocalDoor();
        services.AddBroker(plan);
        services.AddSingleton(s => new Lazy<MqttOut>(s.GetRequiredService<MqttOut>)).AddSingleton<ITransitionStage, AlarmNews>().AddSingleton<DerivedValues>().AddHostedService<DerivedLoop>();
        more?.Invoke(builder);

        var app = builder.Build();
        app.UseExceptionHandler();
        app.UseStatusCodePages(PageRoutes.OnStatus);
        app.UseResponseCompression();
        app.UseAccess();
        Map(app);
        app.Lifetime.ApplicationStarted.Register(() => Started(app.Logger, typeof(MonitorHost).Assembly.GetName().Version!.ToString(3), store.Path, BrokerText(plan), string.Join(", ", app.Urls)));
        return app;
    }

    internal static void AddData(IServiceCollection services)
    {
        services.AddSingleton<HealthBoard>().AddSingleton<LiveFeed>();
        services.AddSingleton(s => ConfigurationRows.History(s.GetRequiredService<IStoreReader>(), s.GetRequiredService<StudioPlan>()));
        services.AddSingleton<StoreWriter>().AddSingleton<IStoreWriter>(s => s.GetRequiredService<StoreWriter>());
        services.AddSingleton<SeriesBook>().AddSingleton<ArrivalBook>().AddSingleton<LatestReadings>().AddSingleton<RecentSamples>();
        services.AddWiring();
        services.AddSingleton<IIntake, Intake>().AddSingleton<IReadingHistory, ReadingHistory>();
        services.AddSingleton<HourlyMove>().AddSingleton<Upkeep>();
        services.AddSingleton<ModeBook>().AddSingleton<IModes>(s => s.GetRequiredService<ModeBook>());
        services.AddSingleton<LogbookBook>().AddSingleton<ILogEntryStage>(s => s.GetRequiredService<LogbookBook>());
        services.AddSingleton<ILogbookStage, ModeEntries>();
        services.AddSingleton<ModeHistory>().AddSingleton<MeterLog>().AddSingleton<PhotoShelf>();
        services.AddSingleton<MeterAnswers>().AddSingleton<FuelBook>().AddSingleton<FlueBook>().AddSingleton<StudioFuel>().AddSingleton<PotBook>().AddSingleton<MeltingBook>();
        services.AddMoney();
        services.AddSingleton<ITickStage, TimetableWatch>().AddSingleton<ITickStage, MinuteClose>().AddSingleton<ITickStage, DiskWatch>().AddSingleton<ITickStage, ClockWatch>();
    }

    static void AddWeb(IServiceCollection services, TimeProvider realClock)
    {
        services.AddSingleton<ApplianceAnswers>().AddSingleton<HealthAnswers>().AddSingleton<OfflineShell>();
        services.AddSingleton(s => ActivatorUtilities.CreateInstance<LiveStream>(s, realClock));
        services.AddPages();
        services.AddOpenApi();
        services.AddProblemDetails().AddExceptionHandler<Problems>();
        services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Converters.Add(new InstantText());
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
        });
        services.AddOpenTelemetry().WithMetrics(m => m.AddMeter("HotShop.Monitor", BrokerCounters.MeterName).AddMeter("Microsoft.AspNetCore.Server.Kestrel").AddPrometheusExporter());
    }

    static void Map(WebApplication app)
    {
        app.MapStaticAssets();
        app.MapPages();
        app.MapOffline();
        app.MapStudio();
        app.MapReadings();
        app.MapWiring();
        app.MapLogbook();
        app.MapFuel();
        app.MapFlue();
        app.MapMeters();
        app.MapPhotos();
        app.MapMoney();
        app.MapReports();
        app.MapPots();
        app.MapAlarms();
        app.MapAnnealing();
        app.MapNotifications();
        app.MapHandover();
        app.MapSums();
        app.MapHistory();
        app.MapProbes();
        app.MapOpenApi("/openapi/v1.json");
        app.MapPrometheusScrapingEndpoint("/metrics");
    }

    static void Logging(WebApplicationBuilder builder, StudioPlan plan) => builder.Services.AddSerilog(log => log
        .MinimumLevel.Information()
        .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
        .MinimumLevel.Override("System", LogEventLevel.Warning)
        .MinimumLevel.Override("Quartz", LogEventLevel.Warning)
        // It warns that its keys are not encrypted at rest; they lie in a folder that only the service may read.
        .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
        .WriteTo.Console(outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}", formatProvider: CultureInfo.InvariantCulture)
        .WriteTo.File(Path.Combine(plan.DataDirectory, "logs", "hotshop-.log"), formatProvider: CultureInfo.InvariantCulture,
            rollingInterval: RollingInterval.Day, retainedFileCountLimit: 31, fileSizeLimitBytes: 20 << 20, rollOnFileSizeLimit: true));

    /// <summary>Where readings come in.</summary>
    internal static string BrokerText(StudioPlan plan) => plan.Configuration.Broker switch
    {
        { Mode: "outside" } broker => $"the broker {broker.Host}:{broker.Port}",
        var broker => $"mqtt://{broker.Listen}",
    };

    [LoggerMessage(Level = LogLevel.Information, Message = "hotshop {Version} started: store {Store}, readings at {Broker}, pages at {Pages}")]
    private static partial void Started(Microsoft.Extensions.Logging.ILogger log, string version, string store, string broker, string pages);
}
