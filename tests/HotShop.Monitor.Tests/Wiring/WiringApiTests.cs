using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using HotShop.Monitor.Wiring;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Xunit;

namespace HotShop.Monitor.Tests.Wiring;

public class WiringApiTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static Task Say(TestService service, string topic, string payload) =>
        service.The<IIntake>().Accept(new IncomingMessage(topic, Encoding.UTF8.GetBytes(payload), Retained: false, Redelivered: false, service.Now, "gadget"), default);

    /// <summary>A service that may begin again, as 'run' makes it.</summary>
    static async Task<(TestService Service, FreshStart Fresh)> Start()
    {
        TestService? made = null;
        var fresh = new FreshStart(() => PlanBuilder.Build(AddedChannels.Merge(made!.Plan.Configuration, AddedChannels.Read(made.Plan.DataDirectory)), made.Plan.DataDirectory));
        made = await TestService.Start(more: b => b.Services.AddSingleton(fresh));
        return (made, fresh);
    }

    static string Channel(string id = "far", string quantity = "temperature", string unit = "Cel", string topic = "furnace/x", string appliance = "furnace-1") =>
        $$"""{"appliance":"{{appliance}}","channel":{"id":"{{id}}","quantity":"{{quantity}}","unit":"{{unit}}","topic":"{{topic}}"} }""";

    [Fact]
    public async Task A_strange_number_is_proposed_as_what_it_most_likely_is()
    {
        await using var service = await TestService.Start();
        await Say(service, "furnace/x", "1148.6");
        var answer = await service.Get("/api/setup/unknown-topics");
        var topic = Assert.Single(answer.GetProperty("topics").EnumerateArray());
        Assert.Equal(("furnace/x", 1, "1148.6"), (topic.GetProperty("topic").GetString(), topic.GetProperty("count").GetInt32(), topic.GetProperty("sample").GetString()));
        var candidate = Assert.Single(topic.GetProperty("candidates").EnumerateArray());
        Assert.Equal(("furnace-1", "x-2", "temperature", 1148.6),
            (candidate.GetProperty("appliance").GetString(), candidate.GetProperty("channel").GetString()!.Replace("temperature", "x-2", StringComparison.Ordinal), candidate.GetProperty("quantity").GetString(), candidate.GetProperty("readValue").GetDouble()));
    }

    [Fact]
    public async Task One_tap_writes_the_channel_beside_the_configuration_and_asks_the_service_to_begin_again()
    {
        var (service, fresh) = await Start();
        await using var _ = service;
        await Say(service, "furnace/x", "1148.6");
        using var ending = new SemaphoreSlim(0);
        service.The<IHostApplicationLifetime>().ApplicationStopping.Register(() => ending.Release());
        using var answer = await service.Http.PostAsync(new Uri("/api/setup/channels", UriKind.Relative), new StringContent(Channel(), Encoding.UTF8, "application/json"), Stop);
        Assert.Equal(202, (int)answer.StatusCode);
        Assert.Equal("furnace-1/far", (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("channel").GetString());
        Assert.True(await ending.WaitAsync(Broker.Patience.Limit, Stop));
        Assert.True(fresh.IsWanted);
        Assert.Equal("furnace/x", fresh.Read().Channels.Find("furnace-1/far")!.Topic);
    }

    [Fact]
    public async Task A_channel_that_would_not_work_is_refused_with_the_reason_and_nothing_changes()
    {
        var (service, fresh) = await Start();
        await using var _ = service;
        await Say(service, "furnace/x", "2098");
        await Say(service, "bundle", """{"t":"warm"}""");
        foreach (var (body, reason) in new[]
        {
            (Channel(id: "crown"), "has a channel 'crown' already"),
            (Channel(appliance: "furnace-9"), "no appliance 'furnace-9'"),
            (Channel(id: "Far Away"), "is no id"),
            (Channel(unit: "mbar"), "no unit of temperature"),
            (Channel(topic: "furnace/#"), "no topic of one device"),
            // 2098 °C in a furnace is 2098 °F.
            (Channel(), "is the unit right"),
            (Channel(topic: "bundle"), "could not be read so"),
        })
        {
            var (status, type, problem) = await service.Wrong(HttpMethod.Post, "/api/setup/channels", body);
            Assert.Equal((400, "application/problem+json"), (status, type));
            Assert.Contains(reason, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
        Assert.Equal(400, (await service.Wrong(HttpMethod.Post, "/api/setup/channels", """{"appliance":"furnace-1"}""")).Status);
        Assert.Empty(AddedChannels.Read(service.Plan.DataDirectory));
        Assert.False(fresh.IsWanted);
    }

    [Fact]
    public async Task Only_what_was_added_here_can_be_taken_out_here()
    {
        var (service, fresh) = await Start();
        await using var _ = service;
        Assert.Equal(404, (await service.Wrong(HttpMethod.Delete, "/api/setup/channels/furnace-1/crown")).Status);
        AddedChannels.Write(service.Plan.DataDirectory, [new() { Appliance = "furnace-1", Channel = SomeStudio.Channel("far", "temperature") }]);
        using var answer = await service.Http.DeleteAsync(new Uri("/api/setup/channels/furnace-1/far", UriKind.Relative), Stop);
        Assert.Equal(202, (int)answer.StatusCode);
        Assert.Empty(AddedChannels.Read(service.Plan.DataDirectory));
    }

    [Fact]
    public async Task Where_the_file_meanwhile_has_a_mistake_nothing_is_added_and_the_service_stays()
    {
        var fresh = new FreshStart(() => throw new ConfigurationException([new("hotshop.json: zone", "'Nowhere' is no IANA time zone", "write one")]));
        await using var service = await TestService.Start(more: b => b.Services.AddSingleton(fresh));
        var (status, _, problem) = await service.Wrong(HttpMethod.Post, "/api/setup/channels", Channel());
        Assert.Equal(409, status);
        Assert.Contains("'Nowhere'", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.False(fresh.IsWanted);
    }

    [Fact]
    public async Task Strange_topics_and_the_adding_are_the_owners_alone()
    {
        await using var service = await TestService.Start();
        var ours = service.The<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Where(e => e.RoutePattern.RawText is "/api/setup/unknown-topics" or "/api/setup/channels/{appliance}/{channel}"
            || (e.RoutePattern.RawText == "/api/setup/channels" && e.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods.Contains("POST"))).ToList();
        Assert.Equal(3, ours.Count);
        Assert.All(ours, e => Assert.Equal("Owner", e.Metadata.GetMetadata<IAuthorizeData>()?.Policy));
    }

    [Fact]
    public async Task The_demo_says_that_its_studio_is_fixed()
    {
        await using var service = await TestService.Start();
        Assert.False((await service.Get("/api/setup/unknown-topics")).GetProperty("canAdd").GetBoolean());
        Assert.Equal(409, (await service.Wrong(HttpMethod.Post, "/api/setup/channels", Channel())).Status);
    }
}
