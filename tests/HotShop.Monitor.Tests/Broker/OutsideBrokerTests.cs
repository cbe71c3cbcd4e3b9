using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using Microsoft.Extensions.Logging.Abstractions;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using MQTTnet.Server;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>The client of an outside broker against a broker inside the test, for answers that Mosquitto does not give.</summary>
public sealed class OutsideBrokerTests : IAsyncDisposable
{
    readonly TemporaryFolder folder = new();
    readonly MqttServer server;
    readonly int port = SomePlan.FreePort();
    readonly FakeIntake intake = new();
    readonly HealthBoard health = new();
    readonly BrokerCounters counters = new();
    OutsideBroker? client;

    public OutsideBrokerTests() =>
        server = new MqttServerFactory().CreateMqttServer(new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointPort(port).WithPersistentSessions().Build());

    async Task Start(string more = "")
    {
        await server.StartAsync();
        client = new OutsideBroker(SomePlan.With($$"""{ "mode": "outside", "host": "127.0.0.1", "port": {{port}}{{more}} }""", folder.Path), intake, health, counters,
            new ScaledClock(new RealClock(), 20, new DateTimeOffset(2026, 3, 1, 0, 0, 0, TimeSpan.Zero)), NullLogger<OutsideBroker>.Instance);
        await client.StartAsync(TestContext.Current.CancellationToken);
    }

    string Detail => health.Of(HealthBoard.Broker)!.Detail;

    Task Working() => Patience.Until(() => health.IsWorking(HealthBoard.Broker), () => $"the broker part works; it says '{Detail}'");

    Task Trouble(string detail) => Patience.Until(() => !health.IsWorking(HealthBoard.Broker) && Detail.Contains(detail, StringComparison.Ordinal), () => $"trouble with '{detail}'; it says '{Detail}'");

    [Fact]
    public async Task A_session_taken_over_by_another_client_is_named_and_left_alone()
    {
        await Start();
        await Working();
        var id = await File.ReadAllTextAsync(Path.Combine(folder.Path, "data", "broker-client-id"), TestContext.Current.CancellationToken);
        using var twin = new MqttClientFactory().CreateMqttClient();
        await twin.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithClientId(id.Trim()).WithProtocolVersion(MqttProtocolVersion.V500).Build(), TestContext.Current.CancellationToken);
        await Trouble($"another client has connected as '{id.Trim()}'");
    }

    [Fact]
    public async Task A_broker_that_speaks_only_3_1_1_will_do()
    {
        server.ValidatingConnectionAsync += connection =>
        {
            if (connection.ProtocolVersion == MqttProtocolVersion.V500) connection.ReasonCode = MqttConnectReasonCode.UnsupportedProtocolVersion;
            return Task.CompletedTask;
        };
        await Start();
        await Working();
        await server.InjectApplicationMessage("hotshop/quillmere/furnace-1/crown", "1148", MqttQualityOfServiceLevel.AtLeastOnce);
        Assert.Equal("hotshop/quillmere/furnace-1/crown", (await intake.Next()).Topic);
    }

    [Fact]
    public async Task A_refused_subscription_is_trouble_that_names_the_topic()
    {
        server.InterceptingSubscriptionAsync += subscription =>
        {
            if (subscription.TopicFilter.Topic == "gadget/7/state")
            {
                subscription.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
                subscription.ProcessSubscription = false;
            }
            return Task.CompletedTask;
        };
        await Start();
        await Trouble("it refuses the subscription to 'gadget/7/state' (NotAuthorized)");
    }

    [Fact]
    public async Task The_client_id_is_made_once_per_store()
    {
        await Start();
        await Working();
        var first = new BrokerMemory(Path.Combine(folder.Path, "data")).ClientId();
        Assert.Equal(first, new BrokerMemory(Path.Combine(folder.Path, "data")).ClientId());
        Assert.Contains(first, (await server.GetClientsAsync()).Select(c => c.Id));
        using var elsewhere = new TemporaryFolder();
        Assert.NotEqual(first, new BrokerMemory(elsewhere.Path).ClientId());
    }

    [Fact]
    public async Task Without_a_broker_it_says_what_to_check()
    {
        var plan = SomePlan.With($$"""{ "mode": "outside", "host": "127.0.0.1", "port": {{port}} }""", folder.Path);
        client = new OutsideBroker(plan, intake, health, counters, new RealClock(), NullLogger<OutsideBroker>.Instance);
        await client.StartAsync(TestContext.Current.CancellationToken);
        await Trouble("nothing listens there: check that the broker runs, broker.host and broker.port");
        var refused = await Assert.ThrowsAsync<BrokerLinkException>(() => client.Publish("hotshop/quillmere/out/x/y", [], retain: true, CancellationToken.None));
        Assert.Contains("no connection", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unreadable_certificate_authority_is_named_at_start()
    {
        folder.Write("ca.pem", "no certificate");
        var wrong = await Assert.ThrowsAsync<ConfigurationException>(() => Start(""", "tls": true, "caFile": "ca.pem" """));
        Assert.Contains("ca.pem holds no certificate", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_published_while_the_broker_was_away_is_published_when_it_is_back()
    {
        using var link = new MqttOut(SomePlan.With($$"""{ "mode": "outside", "host": "127.0.0.1", "port": {{port}} }""", folder.Path), Link(out var broker), NullLogger<MqttOut>.Instance);
        await link.StartAsync(TestContext.Current.CancellationToken);
        link.Alarm("furnace-1/overheat", "unacknowledged", 1, "Furnace 1 is too hot");
        link.Value("furnace-1", "crown", 1299, "Cel", NodaTime.Instant.FromUtc(2026, 3, 1, 0, 0));
        link.Value("furnace-1", "crown", double.NaN, "Cel", NodaTime.Instant.FromUtc(2026, 3, 1, 0, 1));
        await broker.StartAsync(TestContext.Current.CancellationToken);
        await server.StartAsync();
        await Patience.Until(() => Retained().Count >= 2, () => $"both topics are there: {string.Join(", ", Retained().Keys)}");
        Assert.Equal("""{"state":"unacknowledged","priority":1,"text":"Furnace 1 is too hot"}""", Retained()["hotshop/quillmere/out/alarms/furnace-1-overheat"]);
        Assert.Equal("""{"value":null,"unit":"Cel","time":"2026-03-01T00:01:00Z","uncertainty":null}""", Retained()["hotshop/quillmere/out/furnace-1/crown"]);

        // A broker that forgets is told again.
        await server.DeleteRetainedMessagesAsync();
        foreach (var one in await server.GetClientsAsync()) await one.DisconnectAsync(new MqttServerClientDisconnectOptions());
        await Patience.Until(() => Retained().Count >= 2, "both are there again");
        await link.StopAsync(TestContext.Current.CancellationToken);

        Dictionary<string, string> Retained() => server.GetRetainedMessagesAsync().GetAwaiter().GetResult()
            .Where(m => !m.Topic.EndsWith("/service", StringComparison.Ordinal)).ToDictionary(m => m.Topic, m => m.ConvertPayloadToString());
    }

    IBrokerLink Link(out OutsideBroker broker) =>
        client = broker = new OutsideBroker(SomePlan.With($$"""{ "mode": "outside", "host": "127.0.0.1", "port": {{port}} }""", folder.Path), intake, health, counters,
            new ScaledClock(new RealClock(), 20, new DateTimeOffset(2026, 3, 1, 0, 0, 0, TimeSpan.Zero)), NullLogger<OutsideBroker>.Instance);

    public async ValueTask DisposeAsync()
    {
        if (client is not null) await client.StopAsync(CancellationToken.None);
        client?.Dispose();
        await server.StopAsync(new MqttServerStopOptions());
        server.Dispose();
        counters.Dispose();
        folder.Dispose();
    }
}
