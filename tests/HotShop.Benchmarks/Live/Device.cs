using System.Globalization;
using MQTTnet;
using MQTTnet.Protocol;

namespace HotShop.Benchmarks.Live;

/// <summary>One MQTT client; a publish ends when the broker has acknowledged it, so when the reading is durable.</summary>
sealed class Device : IAsyncDisposable
{
    readonly IMqttClient client = new MqttClientFactory().CreateMqttClient();

    public static async Task<Device> Connect(int port, string id, CancellationToken stop)
    {
        var device = new Device();
        await device.client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithClientId(id).WithCleanSession().Build(), stop);
        return device;
    }

    public Task Publish(string appliance, string channel, double value, DateTimeOffset time, CancellationToken stop) =>
        Publish(appliance, channel, Row(value, time), stop);

    public static string Row(double value, DateTimeOffset time) =>
        string.Create(CultureInfo.InvariantCulture, $"{{\"value\":{value:0.###},\"time\":\"{time.UtcDateTime:yyyy-MM-ddTHH:mm:ss.ffffffZ}\"}}");

    public Task Publish(string appliance, string channel, string payload, CancellationToken stop) =>
        client.PublishAsync(new MqttApplicationMessageBuilder().WithTopic($"hotshop/bench/{appliance}/{channel}").WithPayload(payload)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build(), stop);

    public async ValueTask DisposeAsync()
    {
        await client.TryDisconnectAsync();
        client.Dispose();
    }
}
