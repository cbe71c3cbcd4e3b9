using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Web;

/// <summary>A studio whose only gas meter hangs on the wall, over HTTP.</summary>
public sealed class MeterCallTests
{
    static readonly StudioConfiguration Typed = SomeStudio.Configuration with
    {
        Appliances =
        [
            new() { Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", NameplateKilowatts = 90, Channels = [] },
            new() { Id = "shop", Name = "Shop", Kind = "shop", Channels = [SomeStudio.Channel("meter", "gas-volume") with { Reports = "typed", CounterDigits = 5 }] },
        ],
    };

    static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

    /// <summary>kWh of a cubic metre at the meter: sea level, 15 °C, 21 mbar; 10.55 kWh/m³ at 15 °C and 101.325 kPa.</summary>
    const double KilowattHoursPerCubicMetre = 103_425 / 101_325.0 * 10.55;

    static async Task<TestService> Read(params (double Days, double Number)[] readings)
    {
        var service = await TestService.Start(Typed);
        var i = 0;
        foreach (var (days, number) in readings)
            Assert.Equal(201, (await service.Log(new { appliance = "shop", entry = "meter-reading", id = $"r{i++}", reading = number, unit = "m3", time = (service.Now - Days(days)).ToString() })).Status);
        return service;
    }

    [Fact]
    public async Task The_studio_s_gas_is_told_without_naming_an_appliance_and_by_naming_the_shop()
    {
        await using var service = await Read((3, 48_000), (0, 48_150));
        var span = $"from={service.Now - Days(3)}&to={service.Now}&step=month";
        var all = (await service.Get($"/api/fuel?{span}")).EnumerateArray().ToList();
        Assert.Equal(150 * KilowattHoursPerCubicMetre, all.Sum(m => m.GetProperty("energyKwh").GetDouble()), 1.0);
        Assert.Equal(all.Sum(m => m.GetProperty("totalKwh").GetDouble()), all.SelectMany(m => m.GetProperty("parts").EnumerateArray()).Sum(p => p.GetProperty("kwh").GetDouble()), 6);
        Assert.Equal("derived", all[0].GetProperty("parts")[0].GetProperty("origin").GetString());
        Assert.Equal(all[0].GetRawText(), (await service.Get($"/api/fuel?appliance=shop&{span}"))[0].GetRawText());
        var furnace = (await service.Get($"/api/fuel?appliance=furnace-1&{span}"))[0];
        Assert.Equal("derived", furnace.GetProperty("origin").GetString());
        Assert.Equal(all[0].GetProperty("totalKwh").GetDouble(), furnace.GetProperty("totalKwh").GetDouble(), 6);
    }

    [Fact]
    public async Task A_meter_tells_its_place_its_readings_and_the_factor_that_is_applied()
    {
        await using var service = await Read((6, 48_000), (3, 48_048), (0, 48_100));
        var answer = await service.Get("/api/meters");
        var meter = Assert.Single(answer.GetProperty("meters").EnumerateArray());
        Assert.Equal(("quillmere/shop/meter", true, "typed"), (meter.GetProperty("id").GetString(), meter.GetProperty("isMain").GetBoolean(), meter.GetProperty("reports").GetString()));
        Assert.Equal([48_100.0, 48_048.0, 48_000.0], meter.GetProperty("readings").EnumerateArray().Select(r => r.GetProperty("reading").GetDouble()));
        Assert.Equal(100 / 6.0, meter.GetProperty("usualPerDay").GetDouble(), 6);
        Assert.InRange(meter.GetProperty("week").GetProperty("energyKwh").GetDouble(), 99 * KilowattHoursPerCubicMetre, 101 * KilowattHoursPerCubicMetre);
        Assert.Equal(103_425 / 101_325.0, answer.GetProperty("gas").GetProperty("factor").GetDouble(), 9);
        Assert.Contains("21 mbar", answer.GetProperty("gas").GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bill_s_own_factor_goes_before_ours()
    {
        await using var service = await TestService.Start(Typed with { Gas = new() { BillFactor = 1.02264 } });
        var gas = (await service.Get("/api/meters")).GetProperty("gas");
        Assert.Equal(("bill", 1.02264), (gas.GetProperty("source").GetString(), gas.GetProperty("factor").GetDouble()));
        Assert.Contains("the factor of your bill", gas.GetProperty("words").GetString(), StringComparison.Ordinal);
    }

    // Half-foot dial, 22 s: 81.82 ft³/h, gas service table.
    [Fact]
    public async Task Presses_become_flow_and_power_and_nothing_is_stored()
    {
        await using var service = await TestService.Start(Typed);
        var answer = await service.Get("/api/meters/dial?dial=0.5&unit=[cft_i]&presses=0,22&shown=2.2");
        Assert.Equal(81.82 * 0.028316846592, answer.GetProperty("flowM3PerHour").GetDouble(), 0.0002);
        Assert.Equal(answer.GetProperty("flowM3PerHour").GetDouble() * KilowattHoursPerCubicMetre, answer.GetProperty("powerKw").GetDouble(), 6);
        Assert.Equal(answer.GetProperty("flowM3PerHour").GetDouble() / 2.2, answer.GetProperty("meterFactor").GetDouble(), 6);
        Assert.Empty((await service.Get("/api/logbook")).EnumerateArray());
        var (status, _, problem) = await service.Wrong(HttpMethod.Get, "/api/meters/dial?dial=0.5&unit=[cft_i]&presses=0");
        Assert.Equal(400, status);
        Assert.Contains("presses=0,22.1,44.0", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    static async Task<HttpStatusCode> Send(TestService service, string entry, byte[] content, string type = "image/png")
    {
        using var body = new ByteArrayContent(content) { Headers = { ContentType = new MediaTypeHeaderValue(type) } };
        using var answer = await service.Http.PostAsync(new Uri($"/api/logbook/{entry}/photo", UriKind.Relative), body, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    [Fact]
    public async Task A_picture_is_known_by_its_content_and_shown_as_that()
    {
        await using var service = await Read((0, 48_000));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, await Send(service, "r0", "<svg onload='alert(1)'/>"u8.ToArray()));
        Assert.Equal(HttpStatusCode.NotFound, await Send(service, "nothing", Png));
        Assert.Equal(HttpStatusCode.Created, await Send(service, "r0", Png, "text/html"));
        Assert.Equal(HttpStatusCode.Created, await Send(service, "r0", Png));
        Assert.Equal(HttpStatusCode.Conflict, await Send(service, "r0", [.. Png, 9]));
        using var shown = await service.Http.GetAsync(new Uri("/api/logbook/r0/photo", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(("image/png", "nosniff"), (shown.Content.Headers.ContentType!.MediaType, string.Join("", shown.Headers.GetValues("X-Content-Type-Options"))));
        Assert.Equal(Png, await shown.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.True((await service.Get("/api/meters")).GetProperty("meters")[0].GetProperty("readings")[0].GetProperty("hasPhoto").GetBoolean());
    }

    [Fact]
    public async Task A_picture_may_be_larger_than_other_calls_and_not_larger_than_six_megabytes()
    {
        await using var service = await Read((0, 48_000), (0, 48_001));
        Assert.Equal(HttpStatusCode.Created, await Send(service, "r0", [.. Png, .. new byte[5 << 20]]));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await Send(service, "r1", [.. Png, .. new byte[7 << 20]]));
    }
}
