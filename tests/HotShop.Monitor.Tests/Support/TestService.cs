using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wire;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HotShop.Monitor.Tests.Support;

/// <summary>The whole service as the commands build it, on free ports, in this process; its clocks, the pace of live updates included, are the test's.</summary>
sealed class TestService : IAsyncDisposable
{
    readonly WebApplication app;

    TestService(WebApplication app, StudioPlan plan, FakeTimeProvider clock)
    {
        (this.app, Plan, Clock) = (app, plan, clock);
        Http = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
    }

    public StudioPlan Plan { get; }
    public FakeTimeProvider Clock { get; }
    public HttpClient Http { get; }

    public Instant Now => Instant.FromDateTimeOffset(Clock.GetUtcNow());

    public T The<T>() where T : notnull => app.Services.GetRequiredService<T>();

    /// <param name="configuration">Its listening addresses are replaced by free ones.</param>
    public static async Task<TestService> Start(StudioConfiguration? configuration = null, string? folder = null, Action<WebApplicationBuilder>? more = null)
    {
        folder ??= Directory.CreateTempSubdirectory("hotshop-service-").FullName;
        var ours = (configuration ?? SomeStudio.Configuration) with { DataDirectory = folder, Broker = new() { Listen = $"127.0.0.1:{SomePlan.FreePort()}" } };
        var plan = PlanBuilder.Build(ours, folder);
        var clock = new FakeTimeProvider(OpenStudio.Start.ToDateTimeOffset());
        // As a demo: open on loopback without sign-in, which has tests of its own.
        var app = MonitorHost.Build(plan, new RunChoices(IsDemo: true, Speed: 1), clock, clock, more);
        await app.StartAsync();
        return new TestService(app, plan, clock);
    }

    public Task Send(string channel, string payload, Instant? arrived = null) => The<IIntake>().Accept(
        new IncomingMessage($"hotshop/quillmere/{channel}", Encoding.UTF8.GetBytes(payload), Retained: false, Redelivered: false, arrived ?? Now, Sender: "test"), default);

    public Task Send(string channel, IEnumerable<(Instant At, double Value)> readings) =>
        Task.WhenAll(readings.Select(r => Send(channel, OpenStudio.Timed(r.Value, r.At), r.At)));

    public async Task<JsonElement> Get(string path)
    {
        using var answer = await Http.GetAsync(new Uri(path, UriKind.Relative));
        var text = await answer.Content.ReadAsStringAsync();
        return answer.IsSuccessStatusCode ? JsonSerializer.Deserialize<JsonElement>(text) : throw new InvalidOperationException($"{path}: {answer.StatusCode} {text}");
    }

    /// <summary>What is answered to a call that is wrong: its status, and the problem after RFC 9457.</summary>
    public async Task<(int Status, string Type, JsonElement Problem)> Wrong(HttpMethod method, string path, string? body = null)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await Http.SendAsync(request);
        return ((int)answer.StatusCode, answer.Content.Headers.ContentType?.MediaType ?? "", JsonSerializer.Deserialize<JsonElement>(await answer.Content.ReadAsStringAsync()));
    }

    public async Task<(int Status, JsonElement Entry)> Log(object entry)
    {
        using var answer = await Http.PostAsJsonAsync(new Uri("/api/logbook", UriKind.Relative), entry);
        return ((int)answer.StatusCode, await answer.Content.ReadFromJsonAsync<JsonElement>());
    }

    public Task Move() => The<HourlyMove>().Run(Now, default);

    public Task Tick() => The<IEnumerable<IHostedService>>().OfType<StudioLoop>().Single().Tick(default);

    public Task Stop() => app.StopAsync();

    /// <summary>Ends the service and keeps its folder.</summary>
    public ValueTask Close() => app.DisposeAsync();

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await Close();
        if (Directory.Exists(Plan.DataDirectory)) Directory.Delete(Plan.DataDirectory, recursive: true);
    }
}
