using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using System.Net;
using System.Net.Sockets;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The whole service over the owner's months, in this process, its clock the test's.</summary>
sealed class OwnersService : IAsyncDisposable
{
    readonly WebApplication app;
    readonly string folder;

    OwnersService(WebApplication app, StudioPlan plan, FakeTimeProvider clock, string folder) => (this.app, Plan, Clock, this.folder) = (app, plan, clock, folder);

    public StudioPlan Plan { get; }
    public FakeTimeProvider Clock { get; }
    public string Address => app.Urls.First();
    public Instant Now => Instant.FromDateTimeOffset(Clock.GetUtcNow());
    public T The<T>() where T : notnull => app.Services.GetRequiredService<T>();

    /// <param name="first">First day of which anything is known; null for an empty store.</param>
    public static async Task<OwnersService> Start(LocalDate? first, Instant? now = null, Func<StudioConfiguration, StudioConfiguration>? change = null, bool isDemo = true)
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-owner-").FullName;
        var configuration = (change ?? (c => c))(OwnersMonths.Configuration()) with
        {
            DataDirectory = folder, Http = new() { Listen = "127.0.0.1:0" }, Broker = new() { Listen = $"127.0.0.1:{FreePort()}" },
        };
        var plan = PlanBuilder.Build(configuration, folder);
        var clock = new FakeTimeProvider((now ?? OwnersMonths.Now).ToDateTimeOffset());
        if (first is { } day) OwnersMonths.Fill(plan, day, now ?? OwnersMonths.Now, isDemo);
        var app = MonitorHost.Build(plan, new RunChoices(isDemo, Speed: 1), clock, clock);
        await app.StartAsync();
        var service = new OwnersService(app, plan, clock, folder);
        if (first is { } logged) await OwnersMonths.Log(service.The<LogbookBook>(), logged, service.Now);
        return service;
    }

    static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync(CancellationToken.None);
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
