using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>What callers may rely on is described by the service itself.</summary>
[Collection("pages")]
public sealed class InterfaceTests(ShownStudio studio)
{
    [Theory]
    [InlineData("/api/appliances", "get")]
    [InlineData("/api/readings", "get")]
    [InlineData("/api/fuel", "get")]
    [InlineData("/api/fuel/per-kilogram", "get")]
    [InlineData("/api/pots/{id}", "get")]
    [InlineData("/api/logbook", "get")]
    [InlineData("/api/logbook", "post")]
    [InlineData("/api/alarms", "get")]
    [InlineData("/api/alarms/history", "get")]
    [InlineData("/api/alarms/occurrences/{id}/acknowledge", "post")]
    [InlineData("/api/annealing/loads", "get")]
    [InlineData("/api/annealing/loads", "post")]
    [InlineData("/api/annealing/loads/{id}", "get")]
    [InlineData("/api/live", "get")]
    [InlineData("/api/sums", "get")]
    [InlineData("/api/sums/{name}", "get")]
    public async Task The_description_of_the_interface_has_every_call(string path, string method)
    {
        var described = (await studio.Ask("/openapi/v1.json")).GetProperty("paths");
        Assert.True(described.TryGetProperty(path, out var calls) && calls.TryGetProperty(method, out _), $"{method} {path}");
    }

    [Theory]
    [InlineData("/healthz", "alive")]
    [InlineData("/readyz", "\"ready\":true")]
    [InlineData("/metrics", "# TYPE")]
    public async Task Supervisors_find_their_probes(string path, string words) =>
        Assert.Contains(words, await studio.Http.GetStringAsync(studio.Address + path, TestContext.Current.CancellationToken), StringComparison.Ordinal);
}
