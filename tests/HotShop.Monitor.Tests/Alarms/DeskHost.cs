using System.Net.Http.Json;
using System.Text.Json;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Http;
using HotShop.Monitor.Live;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>The endpoints of alarms and annealing on a port of their own, as the service registers them.</summary>
sealed class DeskHost : IAsyncDisposable, IModes
{
    readonly WebApplication app;
    readonly FakeTimeProvider clock = new(Story.Start.ToDateTimeOffset());

    DeskHost()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrel(k => k.Listen(System.Net.IPAddress.Loopback, 0));
        builder.Services.AddSingleton(TestStudio.Plan).AddSingleton<TimeProvider>(clock).AddSingleton<IStoreReader>(Store).AddSingleton<IStoreWriter>(Store)
            .AddSingleton<IModes>(this).AddSingleton<HealthBoard>().AddSingleton<LiveFeed>().AddSingleton<LatestReadings>().AddSingleton<SeriesBook>().AddSingleton<IReadingHistory, ReadingHistory>()
            .AddAnnealing().AddAlarms().AddProblemDetails().AddExceptionHandler<Problems>();
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.Converters.Add(new InstantText()));
        app = builder.Build();
        app.UseExceptionHandler();
        app.MapAlarms();
        app.MapAnnealing();
    }

    public MemoryStore Store { get; } = new();
    public HttpClient Http { get; } = new();

    public static async Task<DeskHost> Start()
    {
        var host = new DeskHost();
        await host.app.StartAsync();
        host.Http.BaseAddress = new Uri(host.app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        return host;
    }

    public T The<T>() where T : notnull => app.Services.GetRequiredService<T>();

    public Task SendEvery(double seconds, int times, string channel, double value) => Task.WhenAll(Enumerable.Range(0, times).Select(_ =>
    {
        Store.Now += Duration.FromSeconds(seconds);
        clock.SetUtcNow(Store.Now.ToDateTimeOffset());
        var plan = TestStudio.Plan.Channels.Find(channel)!;
        StoredReading[] readings = [new(plan, HotShop.Monitor.Wire.Quantities.CanonicalUnit(plan.Quantity), Store.Now, value, ReadingMarks.None, true, Store.Now)];
        return ((IStoreWriter)Store).Write(scope =>
        {
            The<AlarmDesk>().React(readings, scope);
            scope.OnCommit(() => The<LatestReadings>().Adopt(readings));
        });
    }));

    public async Task<JsonElement> Get(string path) => await Http.GetFromJsonAsync<JsonElement>(path);

    public async Task<(int Status, JsonElement Body)> Post(string path, string json)
    {
        using var content = new StringContent(json, System.Text.Encoding.UTF8, "application/json");
        using var answer = await Http.PostAsync(path, content);
        return ((int)answer.StatusCode, await answer.Content.ReadFromJsonAsync<JsonElement>());
    }

    ModeInForce IModes.Of(string appliance) => new(Mode.Holding, Instant.MinValue, "configuration");

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        Http.Dispose();
        Store.Dispose();
    }
}
