using System.Collections.Concurrent;
using HotShop.Monitor.Tests.Broker;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>One visitor with one open page, and everything that page did wrong: errors in its console, failed calls, calls to other hosts.</summary>
sealed class Visit : IAsyncDisposable
{
    readonly ConcurrentQueue<string> faults = new();
    readonly ConcurrentQueue<IResponse> responses = new();
    readonly Uri host;

    Visit(IBrowserContext context, IPage page, Uri host)
    {
        (Context, Page, this.host) = (context, page, host);
        page.PageError += (_, fault) => faults.Enqueue($"script error: {fault}");
        page.Console += (_, said) => { if (said.Type == "error" && !IsExpected) faults.Enqueue($"console: {said.Text}"); };
        page.Response += (_, response) =>
        {
            responses.Enqueue(response);
            if (response.Status >= 400 && !IsExpected) faults.Enqueue($"{response.Status} {response.Url}");
        };
    }

    public IBrowserContext Context { get; }
    public IPage Page { get; }

    /// <summary>Set while the test itself cuts the line: then failing is no fault.</summary>
    public bool IsExpected { get; set; }

    public static async Task<Visit> Open(IBrowser browser, string address, Screen screen, ColorScheme scheme, bool hasScript)
    {
        var host = new Uri(address);
        var context = await browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = screen.Width, Height = screen.Height }, ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce, Locale = "en-GB", JavaScriptEnabled = hasScript,
        });
        context.SetDefaultTimeout((float)Patience.Limit.TotalMilliseconds);
        var visit = new Visit(context, await context.NewPageAsync(), host);
        await context.RouteAsync("**/*", async route =>
        {
            var asked = new Uri(route.Request.Url);
            if (asked.Scheme is "data" or "blob" || asked.Authority == host.Authority)
            {
                await route.FallbackAsync();
                return;
            }
            visit.faults.Enqueue($"asked another host: {asked}");
            await route.AbortAsync();
        });
        await visit.Page.GotoAsync(address, new() { WaitUntil = WaitUntilState.DOMContentLoaded });
        return visit;
    }

    /// <summary>The page has its first data: what says that it is loading is gone.</summary>
    public Task Ready() => Page.Locator("#loading").WaitForAsync(new() { State = WaitForSelectorState.Hidden });

    /// <summary>What came over the line so far, headers included.</summary>
    public async Task<IReadOnlyList<(string Path, long Bytes)>> Weights()
    {
        List<(string, long)> parts = [];
        foreach (var response in responses)
        {
            if (response.Url.EndsWith("/api/live", StringComparison.Ordinal)) continue;   // never ends
            await response.FinishedAsync();
            var sizes = await response.Request.SizesAsync();
            parts.Add((new Uri(response.Url).PathAndQuery, sizes.ResponseBodySize + sizes.ResponseHeadersSize));
        }
        return parts;
    }

    public Task<bool> ScrollsSideways() => Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth");

    /// <summary>Waits until a question to the page is answered with true.</summary>
    /// <param name="question">A function, <c>() => …</c>: a bare expression would be evaluated again and again, which the pages' content security policy forbids.</param>
    public async Task Until(string question, object? argument = null)
    {
        Assert.Contains("=>", question, StringComparison.Ordinal);
        try
        {
            await Page.WaitForFunctionAsync(question, argument);
        }
        catch (TimeoutException)
        {
            Assert.Fail($"not within {Patience.Limit.TotalSeconds} s on {Page.Url}: {question}\n{string.Join('\n', faults)}\nThe page reads:\n{await Page.Locator("body").InnerTextAsync()}");
        }
    }

    public void HasNoFaults() => Assert.Empty(faults);

    public async ValueTask DisposeAsync() => await Context.DisposeAsync();
}
