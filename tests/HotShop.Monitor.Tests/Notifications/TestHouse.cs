using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Access;
using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>The real store, the real sender and real pages, with real receivers at the other end; only the alarms are to order.</summary>
sealed class TestHouse : IAsyncDisposable
{
    readonly WebApplication app;

    TestHouse(WebApplication app, StudioPlan plan, FakeAlarms alarms, LogLines log) => (this.app, Plan, Alarms, Log) = (app, plan, alarms, log);

    public StudioPlan Plan { get; }

    public FakeAlarms Alarms { get; }

    public LogLines Log { get; }

    public FakeTimeProvider Time => (FakeTimeProvider)app.Services.GetRequiredService<TimeProvider>();

    public INightDesk Night => app.Services.GetRequiredService<INightDesk>();

    public IStoreWriter Writer => app.Services.GetRequiredService<IStoreWriter>();

    public NotificationDesk Desk => app.Services.GetRequiredService<NotificationDesk>();

    public Instant Now => Time.GetUtcNow().ToInstant();

    public HttpClient Browser { get; } = new(new SocketsHttpHandler { AllowAutoRedirect = false });

    /// <param name="isSending">False: the sender never starts, as if the process died right after each commit.</param>
    public static async Task<TestHouse> Open(string folder, IReadOnlyList<PersonOptions> people, NotificationOptions notifications, bool isSending = true)
    {
        var plan = TestNight.PlanFor(people, folder, notifications);
        var log = new LogLines();
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
        // As the service logs: the framework's own lines at Information would show addresses with their tokens.
        builder.Logging.ClearProviders().AddProvider(log).SetMinimumLevel(LogLevel.Trace).AddFilter("Microsoft", LogLevel.Warning);
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var services = builder.Services;
        services.AddSingleton<TimeProvider>(new FakeTimeProvider(new DateTimeOffset(2040, 3, 1, 2, 14, 0, TimeSpan.Zero)));
        services.AddSingleton(plan).AddSingleton<HealthBoard>();
        services.AddSingleton(_ => StudioStore.Open(plan, isDemo: false)).AddSingleton<IStoreReader>(s => s.GetRequiredService<StudioStore>());
        services.AddSingleton<StoreWriter>().AddSingleton<IStoreWriter>(s => s.GetRequiredService<StoreWriter>());
        services.AddSingleton<FakeAlarms>().AddSingleton<IAlarmDesk>(s => s.GetRequiredService<FakeAlarms>());
        var clock = new FakeTimeProvider();
        services.AddNotifications(plan, clock);
        services.AddAccess(new(folder, plan.Configuration.Http, IsOpen: true), clock);
        var app = builder.Build();
        app.UseAccess();
        app.MapNotifications();
        var house = new TestHouse(app, plan, app.Services.GetRequiredService<FakeAlarms>(), log);
        house.Alarms.Stage = app.Services.GetRequiredService<ITransitionStage>();
        if (!isSending) return house;
        await app.StartAsync();
        house.Browser.BaseAddress = new Uri(app.Urls.First());
        return house;
    }

    public async Task<string> Overheat(string id = "furnace-1.overheat.crown-1")
    {
        await Alarms.Raise(FakeAlarms.Overheat(Now, id: id));
        return id;
    }

    public async Task Pass(double minutes)
    {
        Time.Advance(TimeSpan.FromMinutes(minutes));
        await Writer.Write(Desk.Tick);
    }

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        await app.DisposeAsync();
    }
}
