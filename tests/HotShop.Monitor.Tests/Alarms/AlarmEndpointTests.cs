using System.Text.Json;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public sealed class AlarmEndpointTests : IAsyncLifetime
{
    DeskHost host = null!;

    public async ValueTask InitializeAsync() => host = await DeskHost.Start();

    public ValueTask DisposeAsync() => host.DisposeAsync();

    async Task<JsonElement> Overheat()
    {
        await host.SendEvery(10, 8, "furnace-1/crown", 1302);
        return Assert.Single((await host.Get("/api/alarms")).EnumerateArray());
    }

    [Fact] public async Task An_alarm_says_everything_that_a_page_needs()
    {
        var alarm = await Overheat();
        string Text(string name) => alarm.GetProperty(name).GetString()!;
        Assert.Equal("furnace-1.overheat.crown", Text("id"));
        Assert.Equal("furnace-1.overheat.crown~20260301T010010000000Z", Text("occurrence"));
        Assert.Equal(("furnace-1", "crown", "too hot", "unacknowledged", "2026-03-01T01:00:10Z"), (Text("appliance"), Text("channel"), Text("name"), Text("state"), Text("since")));
        Assert.Equal((1, 1302.0, 1290.0, "Cel"), (alarm.GetProperty("priority").GetInt32(), alarm.GetProperty("value").GetDouble(), alarm.GetProperty("limit").GetDouble(), Text("unit")));
        foreach (var name in new[] { "sentence", "consequence", "firstStep", "caution" }) Assert.NotEmpty(Text(name));
        foreach (var name in new[] { "who", "acknowledgedAt", "clearedAt" }) Assert.Equal(JsonValueKind.Null, alarm.GetProperty(name).ValueKind);
    }

    [Fact] public async Task Somebody_takes_it_and_everybody_sees_who()
    {
        var occurrence = (await Overheat()).GetProperty("occurrence").GetString();
        var (status, body) = await host.Post($"/api/alarms/occurrences/{occurrence}/acknowledge", """{"who":" Ida "}""");
        Assert.Equal((200, "acknowledged", "Ida"), (status, body.GetProperty("state").GetString(), body.GetProperty("who").GetString()));
        var again = await host.Post($"/api/alarms/occurrences/{occurrence}/acknowledge", """{"who":"Jon"}""");
        Assert.Equal((200, "Ida"), (again.Status, again.Body.GetProperty("who").GetString()));
    }

    [Theory, InlineData("{}"), InlineData("""{"who":"  "}""")]
    public async Task Nobody_is_not_somebody(string body)
    {
        var occurrence = (await Overheat()).GetProperty("occurrence").GetString();
        var (status, problem) = await host.Post($"/api/alarms/occurrences/{occurrence}/acknowledge", body);
        Assert.Equal(400, status);
        Assert.Contains("'who' is missing", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact] public async Task An_occurrence_that_never_was_is_not_found()
    {
        var (status, problem) = await host.Post("/api/alarms/occurrences/furnace-1.overheat.crown~x/acknowledge", """{"who":"Ida"}""");
        Assert.Equal((404, "there is no occurrence 'furnace-1.overheat.crown~x': take 'occurrence' of an item of /api/alarms"), (status, problem.GetProperty("detail").GetString()));
    }

    [Fact] public async Task History_tells_what_rang_in_a_span_and_what_still_stood()
    {
        await Overheat();
        await host.SendEvery(10, 10, "furnace-1/crown", 1150);
        Assert.Equal("returned-unacknowledged", Assert.Single((await host.Get("/api/alarms/history")).EnumerateArray()).GetProperty("state").GetString());
        Assert.Single((await host.Get("/api/alarms/history?from=2026-03-01T01:01:30Z&to=2026-03-01T01:01:40Z")).EnumerateArray());
        Assert.Empty((await host.Get("/api/alarms/history?from=2026-03-01T01:10:00Z&to=2026-03-01T01:20:00Z")).EnumerateArray());
        Assert.Empty((await host.Get("/api/alarms/history?from=2026-03-01T00:00:00Z&to=2026-03-01T01:00:05Z")).EnumerateArray());
    }
}
