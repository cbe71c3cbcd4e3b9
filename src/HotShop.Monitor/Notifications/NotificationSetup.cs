using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications.Mail;
using HotShop.Monitor.Notifications.Push;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Notifications;

static class NotificationSetup
{
    static readonly TimeSpan PushTimeLimit = TimeSpan.FromSeconds(10), MailTimeLimit = TimeSpan.FromSeconds(30);

    /// <summary>Needs in the container: <see cref="IStoreWriter"/>, <see cref="IStoreReader"/>, <see cref="IAlarmDesk"/>, <see cref="HealthBoard"/>, and the service's <see cref="TimeProvider"/>.</summary>
    /// <param name="wallClock">The network's time: back-off and ping run on it even where the service's clock is scaled for a demo.</param>
    public static IServiceCollection AddNotifications(this IServiceCollection services, StudioPlan plan, TimeProvider wallClock)
    {
        var order = new CallOrder(plan.Configuration);
        var http = new HttpMessageInvoker(new SocketsHttpHandler
        {
            AllowAutoRedirect = false, UseCookies = false, ConnectTimeout = TimeSpan.FromSeconds(5), PooledConnectionLifetime = TimeSpan.FromMinutes(2),
        });
        services.AddSingleton(order);
        services.AddSingleton<OutboxBell>();
        services.AddSingleton(new TickPulse(wallClock));
        services.AddSingleton(_ => new NightLinks(LinkKey.Load(plan.DataDirectory), NightLinks.BaseAddress(plan.Configuration.Http)));
        services.AddSingleton(s => new NotificationDesk(plan, order, s.GetRequiredService<OutboxBell>(), s.GetRequiredService<TickPulse>(), s.GetRequiredService<ILogger<NotificationDesk>>()));
        services.AddSingleton<ITransitionStage>(s => s.GetRequiredService<NotificationDesk>());
        services.AddSingleton<ITickStage>(s => s.GetRequiredService<NotificationDesk>());
        services.AddSingleton<INightDesk, NightDesk>();
        services.AddSingleton<OutletReport>();
        services.AddSingleton<CallReport>();
        services.AddSingleton(s => new TestCalls(plan, order, s.GetRequiredService<OutboxBell>(), s.GetRequiredService<NightLinks>(), s.GetRequiredService<IStoreWriter>(), s.GetRequiredService<TimeProvider>()));
        services.AddSingleton(Outlets(plan, http, wallClock));
        services.AddSingleton(s => new LetterPost(
            s.GetRequiredService<OutletsByKind>().Mail as ILetterOutlet, plan, s.GetRequiredService<IStoreWriter>(), s.GetRequiredService<IStoreReader>(), s.GetRequiredService<ILogger<LetterPost>>()));
        services.AddSingleton(s => Sender(s, order, wallClock));
        services.AddHostedService(s => s.GetRequiredService<OutboxSender>());
        services.AddHostedService(s => new Ping(
            plan.Configuration.Notifications.PingUrl is { } url ? new Uri(url) : null, http, s.GetRequiredService<HealthBoard>(), s.GetRequiredService<TickPulse>(),
            s.GetRequiredService<TimeProvider>(), wallClock, s.GetRequiredService<ILogger<Ping>>()));
        services.AddHostedService(s => new UnstoredCall(
            plan, order, s.GetRequiredService<OutletsByKind>(), s.GetRequiredService<HealthBoard>(), s.GetRequiredService<TickPulse>(), wallClock, s.GetRequiredService<ILogger<UnstoredCall>>()));
        return services;
    }

    public static IEndpointRouteBuilder MapNotifications(this IEndpointRouteBuilder routes)
    {
        NotificationEndpoints.Map(routes);
        return routes;
    }

    static OutletsByKind Outlets(StudioPlan plan, HttpMessageInvoker http, TimeProvider wallClock) => new(
        new PushOutlet(http, plan.BaseDirectory, PushTimeLimit),
        plan.Configuration.Notifications.Mail is { } mail ? new MailOutlet(mail, plan.BaseDirectory, MailTimeLimit, wallClock) : null,
        NightLinks.BaseAddress(plan.Configuration.Http));

    static OutboxSender Sender(IServiceProvider services, CallOrder order, TimeProvider wallClock)
    {
        var outlets = services.GetRequiredService<OutletsByKind>();
        var (desk, writer, reader, links) = (services.GetRequiredService<NotificationDesk>(), services.GetRequiredService<IStoreWriter>(), services.GetRequiredService<IStoreReader>(), services.GetRequiredService<NightLinks>());
        var log = services.GetRequiredService<ILogger<OutboxSender>>();
        List<OutboxLane> lanes = [];
        foreach (var to in order.Outlets)
            if (outlets.For(to) is { } outlet) lanes.Add(new(to, outlet, desk, links, writer, reader, wallClock, Random.Shared.NextDouble, log));
        return new(lanes, order, services.GetRequiredService<OutboxBell>(), writer, services.GetRequiredService<HealthBoard>(), services.GetRequiredService<TimeProvider>(), wallClock, log);
    }
}
