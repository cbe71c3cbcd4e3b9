using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Demo;

/// <summary>The demo as a stranger starts it, through its first day.</summary>
public sealed class FirstDayTests
{
    /// <summary>A busy machine plays the day more slowly: this is longer than any single wait.</summary>
    static readonly TimeSpan LongestDay = TimeSpan.FromMinutes(5);

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_a_day_there_is_hourly_fuel_energy_per_kilogram_a_pot_and_an_alarm_that_rang_and_ended()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-day-").FullName;
        var port = Ports.Free();
        using var http = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}") };
        Task<JsonElement> Ask(string path) => http.GetFromJsonAsync<JsonElement>(path, Stop);
        try
        {
            await using (var demo = await ServiceProcess.Start("Stop with Ctrl+C", "demo", "--speed", "1800", "--port", $"{port}", "--data", folder))
            {
                await LiveValues(Ask);
                var start = (await Ask("/api/studio")).GetProperty("now").GetDateTimeOffset();
                await LinkOpens(Ask, http);
                await Until(async () => (await Ask("/api/studio")).GetProperty("now").GetDateTimeOffset() >= start + TimeSpan.FromHours(25));
                var span = $"from={Text(start.AddHours(1))}&to={Text(start.AddHours(24))}";

                var hours = (await Ask($"/api/fuel?appliance=furnace-1&step=hour&{span}")).EnumerateArray().ToList();
                Assert.InRange(hours.Count(h => h.GetProperty("energyKwh").GetDouble() > 5 && h.GetProperty("measuredShare").GetDouble() > 0.95), 20, 24);

                var perKilogram = await Ask($"/api/fuel/per-kilogram?appliance=furnace-1&{span}");
                Assert.True(perKilogram.GetProperty("glassMeltedKg").GetDouble() > 0);
                Within(perKilogram, "grossKwhPerKg");

                var pot = await Ask("/api/pots/furnace-1");
                Within(pot, "massKg");
                Assert.True(pot.GetProperty("massKgHigh95").GetDouble() > pot.GetProperty("massKgLow95").GetDouble());

                var messages = (await Ask("/demo/phone")).EnumerateArray().Select(m => m.GetProperty("content")).ToList();
                var over = (await Ask($"/api/alarms/history?from={Text(start)}&to={Text(start.AddHours(24))}")).EnumerateArray()
                    .Where(a => a.GetProperty("clearedAt").ValueKind == JsonValueKind.String).Select(a => a.GetProperty("occurrence").GetString()).ToList();
                Assert.Contains(over, o => Came(messages, o, "call") && Came(messages, o, "closing"));
                Assert.Equal(0, await demo.Stop());
            }
            Assert.Empty(ServiceLog.Errors(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static Task LiveValues(Func<string, Task<JsonElement>> ask) => Until(async () => (await ask("/api/appliances")).EnumerateArray().SelectMany(a => a.GetProperty("channels").EnumerateArray())
        .Count(c => c.GetProperty("quality").GetString() == "good" && c.GetProperty("value").ValueKind == JsonValueKind.Number) > 15);

    /// <summary>The first call's link, soon after it came: eight hours after the end of its alarm it is closed.</summary>
    static async Task LinkOpens(Func<string, Task<JsonElement>> ask, HttpClient http)
    {
        string? link = null;
        await Until(async () => (link = (await ask("/demo/phone")).EnumerateArray().Select(m => m.GetProperty("content").GetProperty("click").GetString()).FirstOrDefault()) is not null);
        using var night = await http.GetAsync(new Uri(link!), Stop);
        Assert.True(night.IsSuccessStatusCode, "the link of a message opens its page");
    }

    static async Task Until(Func<Task<bool>> isSo)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        limit.CancelAfter(LongestDay);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(200), new RealClock());
        while (!await isSo()) await tick.WaitForNextTickAsync(limit.Token);
    }

    static void Within(JsonElement answer, string name) =>
        Assert.InRange(answer.GetProperty(name).GetDouble(), answer.GetProperty(name + "Low95").GetDouble(), answer.GetProperty(name + "High95").GetDouble());

    static bool Came(IEnumerable<JsonElement> messages, string? occurrence, string kind) =>
        messages.Any(m => m.GetProperty("occurrence").GetString() == occurrence && m.GetProperty("tags")[0].GetString() == kind);

    static string Text(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
}
