using System.Net;
using System.Text.Json;
using HotShop.Monitor.Tests.Fuel;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Web;

/// <summary>One service for all calls of this file: each test has channels or times of its own.</summary>
public sealed class ApiFixture : IAsyncLifetime
{
    internal TestService Service { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Service = await TestService.Start(SomeStudio.Configuration with
    {
        // The published example: 12.2 °C, 21 mbar, 67.5 m, 39.3 MJ/m³.
        Gas = new() { GrossKilowattHoursPerCubicMetre = 39.3 / 3.6, LineGaugeMillibar = 21, LineCelsius = 12.2, AltitudeMetres = 67.5 },
    });

    public ValueTask DisposeAsync() => Service.DisposeAsync();
}

/// <summary>What the interfaces answer, over HTTP.</summary>
public sealed class ApiTests(ApiFixture fixture) : IClassFixture<ApiFixture>
{
    readonly TestService service = fixture.Service;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(p => p.Name);

    [Fact]
    public async Task The_studio_tells_its_name_zone_and_time()
    {
        var studio = await service.Get("/api/studio");
        Assert.Equal(("quillmere", "Europe/Berlin", "2026-03-02T08:00:00Z"), (studio.GetProperty("site").GetString(), studio.GetProperty("zone").GetString(), studio.GetProperty("now").GetString()));
    }

    [Fact]
    public async Task Appliances_come_from_left_to_right_with_mode_value_unit_quality_and_age()
    {
        await service.Send("annealer-3/energy", OpenStudio.Timed(12.5, service.Now - Seconds(5)));
        var all = (await service.Get("/api/appliances")).EnumerateArray().ToList();
        Assert.Equal(["quillmere/shop", "quillmere/furnace-1", "quillmere/glory-hole-1", "quillmere/annealer-1", "quillmere/annealer-2", "quillmere/annealer-3"], all.Select(a => a.GetProperty("id").GetString()));
        Assert.Equal(("annealer", "holding"), (all[5].GetProperty("kind").GetString(), all[5].GetProperty("mode").GetString()));
        var channel = Assert.Single(all[5].GetProperty("channels").EnumerateArray());
        Assert.Equal((12.5, "kW.h", "good", 5.0), (channel.GetProperty("value").GetDouble(), channel.GetProperty("unit").GetString(), channel.GetProperty("quality").GetString(), channel.GetProperty("ageSeconds").GetDouble()));
        Assert.Equal("missing", all[5 - 4].GetProperty("channels")[2].GetProperty("quality").GetString());
    }

    [Fact]
    public async Task Readings_come_raw_by_the_minute_by_the_hour_and_in_any_step()
    {
        var from = service.Now - Hours(3);
        await service.Send("glory-hole-1/chamber", Every(Seconds(10), from, from + Hours(2)).Select((at, i) => (at, 1000.0 + i % 6)));
        await service.Move();
        Task<JsonElement> Ask(string step) => service.Get($"/api/readings?channel=quillmere/glory-hole-1/chamber&from={from}&to={from + Hours(2)}&step={step}");
        var raw = (await Ask("raw")).GetProperty("points");
        Assert.Equal(720, raw.GetArrayLength());
        Assert.Equal((from.ToString(), 1000.0), (raw[0].GetProperty("time").GetString()!, raw[0].GetProperty("value").GetDouble()));
        var minutes = (await Ask("minute")).GetProperty("points");
        Assert.Equal((120, 6, 1000.0, 1005.0), (minutes.GetArrayLength(), minutes[0].GetProperty("count").GetInt32(), minutes[0].GetProperty("min").GetDouble(), minutes[0].GetProperty("max").GetDouble()));
        var hours = (await Ask("hour")).GetProperty("points");
        Assert.Equal((2, 360), (hours.GetArrayLength(), hours[0].GetProperty("count").GetInt32()));
        Assert.Equal(1002.5, hours[0].GetProperty("mean").GetDouble(), 0.1);
        Assert.Equal(240, (await Ask("30")).GetProperty("points").GetArrayLength());
        var slow = (await Ask("1800")).GetProperty("points");
        Assert.Equal((4, 180), (slow.GetArrayLength(), slow[0].GetProperty("count").GetInt32()));
        Assert.Equal("Cel", (await Ask("raw")).GetProperty("unit").GetString());
    }

    [Fact]
    public async Task Practice_16_a_gap_stays_a_gap()
    {
        var from = service.Now - Hours(20);
        await service.Send("annealer-1/chamber", Steady(500, Seconds(30), from, from + Hours(1)).Concat(Steady(480, Seconds(30), from + Hours(14), from + Hours(15))));
        await service.Move();
        var points = (await service.Get($"/api/readings?channel=annealer-1/chamber&from={from}&to={from + Hours(16)}&step=600")).GetProperty("points");
        Assert.DoesNotContain(points.EnumerateArray(), p => string.CompareOrdinal(p.GetProperty("time").GetString(), (from + Hours(1.2)).ToString()) > 0 && string.CompareOrdinal(p.GetProperty("time").GetString(), (from + Hours(13.8)).ToString()) < 0);
    }

    [Fact]
    public async Task Fuel_over_the_whole_way_agrees_with_the_hand_calculation_within_a_thousandth()
    {
        // 4 m³ at the meter, times the published factor 1.02264, times 39.3 MJ/m³ over 3.6.
        const double kilowattHours = 4 * 1.02264 * 39.3 / 3.6;
        var from = service.Now - Hours(6);
        await service.Send("furnace-1/gas-flow", FuelBookTests.Stepped(from, new Random(11)));
        var day = Assert.Single((await service.Get($"/api/fuel?appliance=quillmere/furnace-1&from={from}&to={from + Hours(2)}&step=month")).EnumerateArray());
        Assert.Equal(
            ["from", "to", "energyKwh", "estimatedEnergyKwh", "volumeM3", "costAmount", "currency", "co2Kg", "measuredShare", "meterResets", "origin", "totalKwh", "parts"],
            Names(day).Where(n => !n.EndsWith("95", StringComparison.Ordinal)));
        // Class 1.5, 5 K of 285.35, 5 mbar of 1026.2 at that height, 0.05 % of compressibility, 2 % of heating value: rectangular limits, in quadrature (GUM, JCGM 100:2008, 4.3.7, 5.1.6).
        var volumeRelative = Math.Sqrt((1.5 * 1.5 + 1.7522 * 1.7522 + 0.4872 * 0.4872 + 0.05 * 0.05) / 3) / 100;
        var energyRelative = Math.Sqrt(volumeRelative * volumeRelative + 0.02 * 0.02 / 3);
        Assert.Equal(1 + 1.959964 * energyRelative, day.GetProperty("energyKwhHigh95").GetDouble() / day.GetProperty("energyKwh").GetDouble(), 5);
        Assert.Equal(1 - 1.959964 * energyRelative, day.GetProperty("totalKwhLow95").GetDouble() / day.GetProperty("totalKwh").GetDouble(), 5);
        Assert.Equal(1 - 1.959964 * energyRelative, day.GetProperty("co2KgLow95").GetDouble() / day.GetProperty("co2Kg").GetDouble(), 5);
        Assert.Equal(1 + 1.959964 * volumeRelative, day.GetProperty("volumeM3High95").GetDouble() / day.GetProperty("volumeM3").GetDouble(), 5);
        Assert.Equal(kilowattHours, day.GetProperty("energyKwh").GetDouble(), kilowattHours * 0.001);
        Assert.Equal(4 * 1.02264, day.GetProperty("volumeM3").GetDouble(), 0.004);
        Assert.Equal((0, 1.0), (day.GetProperty("estimatedEnergyKwh").GetDouble(), day.GetProperty("measuredShare").GetDouble()));
        Assert.Equal(2, (await service.Get($"/api/fuel?appliance=furnace-1&from={from}&to={from + Hours(2)}&step=hour")).GetArrayLength());
    }

    [Fact]
    public async Task A_pot_is_told_with_its_interval_now_and_at_a_moment()
    {
        var before = service.Now - Days(3);
        await service.Log(new { appliance = "furnace-1", entry = "charge", id = "api-charge", material = "cullet", massKg = 20, time = before.ToString() });
        var then = await service.Get($"/api/pots/furnace-1?at={before - Hours(1)}");
        var now = await service.Get("/api/pots/quillmere/furnace-1");
        foreach (var name in new[] { "massKg", "massKgLow95", "massKgHigh95", "levelCm", "freeboardCm", "gathersLeft", "hoursLeft", "lastCharge", "readyAt" }) Assert.Contains(name, Names(now));
        Assert.True(now.GetProperty("massKg").GetDouble() > then.GetProperty("massKg").GetDouble() + 15);
        Assert.InRange(now.GetProperty("massKg").GetDouble(), now.GetProperty("massKgLow95").GetDouble(), now.GetProperty("massKgHigh95").GetDouble());
        Assert.Equal("api-charge", now.GetProperty("lastCharge").GetProperty("id").GetString());
        var perKilogram = await service.Get($"/api/fuel/per-kilogram?appliance=furnace-1&from={before - Hours(1)}&to={before + Hours(1)}");
        Assert.Empty(new[] { "glassMeltedKg", "energyKwh", "grossKwhPerKg" }.SelectMany(n => new[] { n, n + "Low95", n + "High95" }).Except(Names(perKilogram)));
        Assert.Equal(20, perKilogram.GetProperty("glassMeltedKg").GetDouble(), 0.5);
        // Two hours are no days: what is not known is null, and says what it needs.
        foreach (var name in new[] { "holdingKw", "meltingKwhPerKg", "nextKwhPerKg" }.SelectMany(n => new[] { n, n + "Low95", n + "High95" }))
            Assert.Equal(JsonValueKind.Null, perKilogram.GetProperty(name).ValueKind);
        Assert.False(string.IsNullOrEmpty(perKilogram.GetProperty("holdingUnknown").GetString()));
        Assert.False(string.IsNullOrEmpty(perKilogram.GetProperty("meltingUnknown").GetString()));
    }

    [Fact]
    public async Task An_entry_is_logged_once_however_often_it_is_posted()
    {
        var entry = new { appliance = "quillmere/furnace-1", entry = "note", id = "api-note", text = "door hinge oiled", who = "Mo", time = "2026-02-20T10:00:00Z" };
        Assert.Equal(201, (await service.Log(entry)).Status);
        var (status, again) = await service.Log(entry);
        Assert.Equal((200, "api-note", "door hinge oiled"), (status, again.GetProperty("id").GetString(), again.GetProperty("text").GetString()));
        var listed = (await service.Get("/api/logbook?appliance=furnace-1&from=2026-02-20T00:00:00Z&to=2026-02-21T00:00:00Z")).EnumerateArray().ToList();
        Assert.Equal("api-note", Assert.Single(listed).GetProperty("id").GetString());
    }

    [Theory]
    [InlineData("GET", "/api/readings", null, 400, "channel")]
    [InlineData("GET", "/api/readings?channel=furnace-1/nose", null, 404, "furnace-1/nose")]
    [InlineData("GET", "/api/readings?channel=furnace-1/crown&step=week", null, 400, "week")]
    [InlineData("GET", "/api/readings?channel=furnace-1/crown&from=yesterday", null, 400, "2026-03-01T02:13:05Z")]
    [InlineData("GET", "/api/readings?channel=furnace-1/crown&from=2026-03-02T00:00:00Z&to=2026-03-01T00:00:00Z", null, 400, "swap")]
    [InlineData("GET", "/api/fuel?appliance=kiln", null, 404, "kiln")]
    [InlineData("GET", "/api/fuel?appliance=furnace-1&step=week", null, 400, "hour, day or month")]
    [InlineData("GET", "/api/pots/annealer-1", null, 404, "no pot")]
    [InlineData("GET", "/api/pots/elsewhere/furnace-1", null, 404, "elsewhere/furnace-1")]
    [InlineData("POST", "/api/logbook", """{"entry":"note","text":"x"}""", 400, "appliance")]
    [InlineData("POST", "/api/logbook", """{"appliance":"furnace-1","entry":"dance"}""", 400, "dance")]
    [InlineData("POST", "/api/logbook", """{"appliance":"furnace-1","entry":"gather","size":"huge"}""", 400, "small, medium, large")]
    public async Task A_wrong_call_is_a_problem_that_says_what_came_and_what_to_send(string method, string path, string? body, int status, string says)
    {
        var (answered, type, problem) = await service.Wrong(new HttpMethod(method), path, body);
        Assert.Equal((status, "application/problem+json", status), (answered, type, problem.GetProperty("status").GetInt32()));
        Assert.Contains(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.False(string.IsNullOrEmpty(problem.GetProperty("title").GetString()));
    }

    [Theory, InlineData("{\"appliance\":"), InlineData("[1,2]"), InlineData("\"gather\"")]
    public async Task What_is_no_entry_at_all_is_refused_as_a_problem_too(string body)
    {
        var (status, type, _) = await service.Wrong(HttpMethod.Post, "/api/logbook", body);
        Assert.Equal((400, "application/problem+json"), (status, type));
    }

    [Fact]
    public async Task The_interface_describes_every_call_it_promises()
    {
        var paths = Names((await service.Get("/openapi/v1.json")).GetProperty("paths")).ToHashSet();
        string[] promised =
        [
            "/api/studio", "/api/appliances", "/api/readings", "/api/fuel", "/api/fuel/per-kilogram", "/api/pots/{id}", "/api/logbook", "/api/alarms", "/api/alarms/history",
            "/api/alarms/occurrences/{id}/acknowledge", "/api/annealing/loads", "/api/annealing/loads/{id}", "/api/live",
        ];
        Assert.Empty(promised.Except(paths));
    }

    [Fact]
    public async Task A_look_changes_nothing()
    {
        var before = service.The<HotShop.Monitor.Store.IStoreReader>();
        using var connection = before.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA data_version";
        var version = command.ExecuteScalar();
        foreach (var path in new[] { "/api/studio", "/api/appliances", "/api/readings?channel=furnace-1/setpoint", "/api/pots/furnace-1", "/api/logbook", "/api/health", "/api/setup/channels" }) await service.Get(path);
        Assert.Equal(version, command.ExecuteScalar());
    }

    [Fact]
    public async Task Probes_say_alive_ready_and_how_much()
    {
        Assert.Equal("alive", await service.Http.GetStringAsync(new Uri("/healthz", UriKind.Relative), Stop));
        await service.Tick();
        using var ready = await service.Http.GetAsync(new Uri("/readyz", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, ready.StatusCode);
        service.The<HotShop.Monitor.Health.HealthBoard>().Report("store", false, "nothing can be stored", service.Now);
        using var unready = await service.Http.GetAsync(new Uri("/readyz", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, unready.StatusCode);
        Assert.Contains("nothing can be stored", await unready.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        await service.Tick();
        using var metrics = await service.Http.GetAsync(new Uri("/metrics", UriKind.Relative), Stop);
        Assert.Equal((HttpStatusCode.OK, "text/plain"), (metrics.StatusCode, metrics.Content.Headers.ContentType!.MediaType));
    }
}
