using System.Net;
using System.Text.Json;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Sums;

/// <summary>One service for all questions: sums change nothing.</summary>
public sealed class SumsService : IAsyncLifetime
{
    internal TestService Service { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Service = await TestService.Start(SomeStudio.Configuration with { Culture = "en-IE" });

    public ValueTask DisposeAsync() => Service.DisposeAsync();

    /// <summary>The results of a sum by the interface.</summary>
    internal async Task<JsonElement> Results(string address) => (await Service.Get("/api/sums/" + address)).GetProperty("results");

    internal async Task<double> Result(string address, string name) => (await Results(address)).GetProperty(name).GetDouble();

    /// <summary>The page as a browser would show it, with its status.</summary>
    internal async Task<(int Status, string Raw, string Text)> Page(string address)
    {
        using var answer = await Service.Http.GetAsync(new Uri("/sums" + address, UriKind.Relative), TestContext.Current.CancellationToken);
        var raw = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return ((int)answer.StatusCode, raw, WebUtility.HtmlDecode(raw));
    }

    /// <summary>What is said beside each field that is wrong.</summary>
    internal async Task<IReadOnlyDictionary<string, string>> Problems(string address)
    {
        var (status, type, problem) = await Service.Wrong(HttpMethod.Get, "/api/sums/" + address);
        Assert.Equal((400, "application/problem+json"), (status, type));
        return problem.GetProperty("errors").EnumerateObject().ToDictionary(e => e.Name, e => e.Value[0].GetString()!);
    }
}
