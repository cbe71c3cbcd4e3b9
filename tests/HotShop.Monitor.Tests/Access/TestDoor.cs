using System.Net;
using System.Net.Http.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Web.Access;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace HotShop.Monitor.Tests.Access;

/// <summary>A real server on a port of its own, with the access rules and a page and a call behind them.</summary>
sealed class TestDoor : IAsyncDisposable
{
    readonly WebApplication app;

    TestDoor(WebApplication app, string folder, LogLines log) => (this.app, Folder, Log) = (app, folder, log);

    public string Folder { get; }

    public LogLines Log { get; }

    public Uri Address => new(app.Urls.First().Replace("127.0.0.1", "localhost", StringComparison.Ordinal));

    /// <summary>How often the changing call got through.</summary>
    public int Changes { get; private set; }

    public static async Task<TestDoor> Open(HttpOptions? http = null, bool isOpen = false, string? folder = null)
    {
        folder ??= Directory.CreateTempSubdirectory("hotshop-door-").FullName;
        var log = new LogLines();
        // Ahead of the machine's own clock, so that the test's browser does not think its cookies too old.
        var clock = new FakeTimeProvider(new DateTimeOffset(2040, 3, 1, 8, 0, 0, TimeSpan.Zero));
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
        builder.Logging.ClearProviders().AddProvider(log).SetMinimumLevel(LogLevel.Information);
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddSingleton<TimeProvider>(clock);
        builder.Services.AddAccess(new(folder, http ?? new(), isOpen), clock);
        var app = builder.Build();
        var door = new TestDoor(app, folder, log);
        app.UseAccess();
        app.MapGet("/", () => "floor");
        app.MapGet("/metrics", () => "up 1");
        app.MapGet("/api/appliances", () => "[]");
        app.MapGet("/api/money", () => "1").RequireAuthorization(AccessPolicies.Owner);
        app.MapPost("/api/logbook", () => { door.Changes++; return Results.Ok(); }).RequireAuthorization(AccessPolicies.Screen);
        app.MapPost("/night/{id}", () => { door.Changes++; return Results.Ok(); }).DisableAntiforgery();
        // Stands for the pages that draw the forms: gives their antiforgery field.
        app.MapGet("/signin", (IAntiforgery forms, HttpContext context) => forms.GetAndStoreTokens(context).RequestToken).AllowAnonymous();
        await app.StartAsync();
        return door;
    }

    public HttpClient Browser() => new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = Address };

    /// <summary>The code printed at the first start.</summary>
    public string SetUpCode => Log.Lines.Last(l => l.Contains("set-up code", StringComparison.Ordinal)).Split(' ')[^1];

    /// <summary>Posts a form as its page would.</summary>
    public static async Task<HttpResponseMessage> Post(HttpClient browser, string path, params (string Name, string Value)[] fields)
    {
        var token = await browser.GetStringAsync("/signin");
        var form = fields.Append((Name: "__RequestVerificationToken", Value: token)).Select(f => new KeyValuePair<string, string>(f.Name, f.Value));
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(form) };
        request.Headers.Add("Origin", browser.BaseAddress!.GetLeftPart(UriPartial.Authority));
        return await browser.SendAsync(request);
    }

    /// <summary>A browser in which the owner has set the password.</summary>
    public async Task<HttpClient> Owner(string password = "glass is slow")
    {
        var browser = Browser();
        var answer = await Post(browser, "/first-run", ("code", SetUpCode), ("password", password), ("passwordAgain", password));
        return answer is { StatusCode: HttpStatusCode.SeeOther, Headers.Location.OriginalString: "/" } ? browser : throw new InvalidOperationException($"first run: {answer.StatusCode} {answer.Headers.Location}");
    }

    /// <summary>A browser paired by the owner.</summary>
    public async Task<HttpClient> Screen(HttpClient owner, string name = "Wall")
    {
        using var made = await owner.PostAsync("/api/screens/pairing", null);
        var code = (await made.Content.ReadFromJsonAsync<PairingCode>())!.Code;
        var browser = Browser();
        var answer = await Post(browser, "/pair", ("code", code), ("name", name));
        return answer is { StatusCode: HttpStatusCode.SeeOther, Headers.Location.OriginalString: "/" } ? browser : throw new InvalidOperationException($"pair: {answer.StatusCode} {answer.Headers.Location}");
    }

    /// <summary>Stops the server and keeps its folder.</summary>
    public async Task Close() => await app.DisposeAsync();

    public async ValueTask DisposeAsync()
    {
        await Close();
        if (Directory.Exists(Folder)) Directory.Delete(Folder, recursive: true);
    }
}
