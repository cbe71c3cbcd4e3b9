using HotShop.Monitor.Broker;
using HotShop.Monitor.Health;
using HotShop.Monitor.Wiring;
using Microsoft.Extensions.Logging.Abstractions;
using MQTTnet;
using MQTTnet.Formatter;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>A running embedded broker in front of a fake store, and devices that talk to it.</summary>
sealed class EmbeddedStudio : IAsyncDisposable
{
    readonly TemporaryFolder folder = new();
    readonly List<IMqttClient> devices = [];

    EmbeddedStudio(string listen, string devicesJson)
    {
        folder.Write("furnace.password", "fire-and-sand\n");
        folder.Write("annealer.password", "slow-and-cool");
        Port = SomePlan.FreePort();
        var plan = SomePlan.With($$"""{ "listen": "{{listen}}:{{Port}}", "devices": {{devicesJson}} }""", folder.Path);
        Broker = new EmbeddedBroker(plan, Intake, Unknown, Health, Counters, new RealClock(), NullLogger<EmbeddedBroker>.Instance);
        Out = new MqttOut(plan, Broker, NullLogger<MqttOut>.Instance);
    }

    public const string TwoDevices = """
        [ { "user": "furnace", "passwordFile": "furnace.password", "appliances": ["furnace-1"] },
          { "user": "annealer", "passwordFile": "annealer.password", "appliances": ["annealer-1"] } ]
        """;

    public int Port { get; }
    public FakeIntake Intake { get; } = new();
    public UnknownTopics Unknown { get; } = new();
    public HealthBoard Health { get; } = new();
    public BrokerCounters Counters { get; } = new();
    public EmbeddedBroker Broker { get; }
    public MqttOut Out { get; }

    public static async Task<EmbeddedStudio> Start(string listen = "127.0.0.1", string devices = "[]")
    {
        var studio = new EmbeddedStudio(listen, devices);
        await studio.Out.StartAsync(TestContext.Current.CancellationToken);
        await studio.Broker.StartAsync(TestContext.Current.CancellationToken);
        await Patience.Until(() => studio.Broker.IsConnected && studio.Health.IsWorking(HealthBoard.Broker), "the broker listens");
        return studio;
    }

    public MqttClientOptionsBuilder Options(string id, MqttProtocolVersion version = MqttProtocolVersion.V500) =>
        new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", Port).WithClientId(id).WithProtocolVersion(version).WithTimeout(TimeSpan.FromSeconds(10));

    public async Task<(IMqttClient Client, MqttClientConnectResult Result)> Connect(MqttClientOptionsBuilder options)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        devices.Add(client);
        return (client, await Patience.For(client.ConnectAsync(options.Build(), TestContext.Current.CancellationToken)));
    }

    public async Task<IMqttClient> Device(string id, string? user = null, string password = "", MqttProtocolVersion version = MqttProtocolVersion.V500)
    {
        var options = Options(id, version);
        var (client, result) = await Connect(user is null ? options : options.WithCredentials(user, password));
        Assert.Equal(MqttClientConnectResultCode.Success, result.ResultCode);
        return client;
    }

    public async ValueTask DisposeAsync()
    {
        Intake.Release();
        foreach (var device in devices) device.Dispose();
        await Out.StopAsync(CancellationToken.None);
        await Broker.StopAsync(CancellationToken.None);
        Broker.Dispose();
        Out.Dispose();
        Counters.Dispose();
        folder.Dispose();
    }
}

static class Publishing
{
    public static Task<MqttClientPublishResult> Send(this IMqttClient device, string topic, string payload, bool retain = false, bool atMostOnce = false)
    {
        var message = new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(payload).WithRetainFlag(retain)
            .WithQualityOfServiceLevel(atMostOnce ? MQTTnet.Protocol.MqttQualityOfServiceLevel.AtMostOnce : MQTTnet.Protocol.MqttQualityOfServiceLevel.AtLeastOnce).Build();
        return device.PublishAsync(message, TestContext.Current.CancellationToken);
    }
}
