using System.Net;
using System.Text.RegularExpressions;
using HotShop.Monitor.Web.Access;
using HotShop.Monitor.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.Monitor.Tests.Access;

/// <summary>The real pages with the real forms: a form's own address takes it, its fields are those that are read.</summary>
public sealed partial class EntryPageTests : IAsyncLifetime
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-entry-").FullName;
    readonly LogLines log = new();
    readonly HttpClient browser = new(new SocketsHttpHandler { AllowAutoRedirect = false });
    WebApplication app = null!;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production", ApplicationName = typeof(AccessOptions).Assembly.GetName().Name,
        });
        builder.Logging.ClearProviders().AddProvider(log);
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddSingleton<TimeProvider>(new FakeTimeProvider());
        builder.Services.AddPages();
        builder.Services.AddAccess(new(folder, new()), new FakeTimeProvider(new DateTimeOffset(2040, 3, 1, 8, 0, 0, TimeSpan.Zero)));
        app = builder.Build();
        app.UseAccess();
        app.MapPages();
        await app.StartAsync();
        browser.BaseAddress = new Uri(app.Urls.First());
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_first_run_page_sets_the_password_and_the_sign_in_page_takes_it()
    {
        var code = log.Lines.Last(l => l.Contains("set-up code", StringComparison.Ordinal)).Split(' ')[^1];
        Assert.Equal("/", await Fill("/first-run", code, "glass is slow", "glass is slow"));
        Assert.Equal("/signin", await Fill("/signout-from-setup"));
        Assert.Equal("/signin?problem=password&returnUrl=%2Fpot", await Fill("/signin?returnUrl=/pot", "/pot", "wrong"));
        Assert.Equal("/pot", await Fill("/signin?returnUrl=/pot", "/pot", "glass is slow"));
    }

    [Fact]
    public async Task The_pairing_page_says_no_to_a_code_that_nobody_made() => Assert.Equal("/pair?problem=code", await Fill("/pair", "AAAA-AAAA", "Wall"));

    /// <summary>Opens a page, fills its form's fields in their order and sends it to the form's own address.</summary>
    async Task<string?> Fill(string page, params string[] values)
    {
        if (page == "/signout-from-setup") return await SignOut();
        var html = await browser.GetStringAsync(page, Stop);
        var form = Form().Match(html);
        var names = Field().Matches(form.Groups["inside"].Value).Select(m => m.Groups["name"].Value).Where(n => n != "__RequestVerificationToken").ToList();
        Assert.Equal(values.Length, names.Count);
        return await Send(form.Groups["action"].Value, html, names.Zip(values));
    }

    async Task<string?> SignOut() => await Send("/signout", await browser.GetStringAsync("/signin", Stop), []);

    async Task<string?> Send(string action, string html, IEnumerable<(string Name, string Value)> fields)
    {
        var token = WebUtility.HtmlDecode(Token().Match(html).Groups["value"].Value);
        using var content = new FormUrlEncodedContent(fields.Append(("__RequestVerificationToken", token)).Select(f => KeyValuePair.Create(f.Item1, f.Item2)));
        using var answer = await browser.PostAsync(action, content, Stop);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return answer.Headers.Location?.OriginalString;
    }

    [GeneratedRegex("<form method=\"post\" action=\"(?<action>[^\"]+)\">(?<inside>.*?)</form>", RegexOptions.Singleline)]
    private static partial Regex Form();

    [GeneratedRegex("<input[^>]* name=\"(?<name>[^\"]+)\"")]
    private static partial Regex Field();

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"(?<value>[^\"]+)\"")]
    private static partial Regex Token();
}
