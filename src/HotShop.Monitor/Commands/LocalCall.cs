using System.Net;
using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Local;
using HotShop.Monitor.Http;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Commands;

/// <summary>Asks the service that has the store to do it, on this computer.</summary>
static class LocalCall
{
    static readonly JsonSerializerOptions json = new(JsonSerializerDefaults.Web) { Converters = { new InstantText() } };

    /// <param name="path">With query, below the local endpoints.</param>
    /// <exception cref="StoreException">The service cannot be reached, or failed.</exception>
    /// <exception cref="CsvFileException">It refused what was sent.</exception>
    public static async Task<T> Send<T>(StudioPlan plan, string path, HttpContent content, CancellationToken stop)
    {
        var door = LocalKey.Read(plan.DataDirectory)
            ?? throw new StoreException($"{plan.DataDirectory}: a service has the store and is still starting, or is of an older version; try again, or stop it first");
        // A large file takes as long as it takes; Ctrl+C ends it.
        using var client = new HttpClient { BaseAddress = new Uri(door.Address), Timeout = Timeout.InfiniteTimeSpan };
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/api/local/{path}", UriKind.Relative)) { Content = content };
        request.Headers.Add(LocalKey.Header, door.Key);
        try
        {
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
            if (answer.IsSuccessStatusCode) return (await answer.Content.ReadFromJsonAsync<T>(json, stop))!;
            var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(stop);
            var detail = problem.TryGetProperty("detail", out var said) && said.GetString() is { } text ? text : $"the service answered {(int)answer.StatusCode}; see its log";
            throw answer.StatusCode == HttpStatusCode.UnprocessableEntity ? new CsvFileException(detail) : new StoreException(detail);
        }
        catch (Exception failure) when (failure is HttpRequestException or JsonException)
        {
            throw new StoreException($"{door.Address}: the service that has the store cannot be reached ({failure.Message}); it may be stopping. Run the command again", failure);
        }
    }
}
