using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Broker;
using MQTTnet;
using MQTTnet.Protocol;
using NodaTime;
using NodaTime.Text;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>The studio's sensors: a device for each appliance, each with an MQTT connection of its own. What they measure is said by the test.</summary>
sealed class Sensors : IAsyncDisposable
{
    readonly StudioConfiguration studio;
    readonly Dictionary<string, IMqttClient> devices = [];
    readonly Dictionary<string, double> values = new(StringComparer.Ordinal);

    /// <summary>A calm working day: everything hot, everything burning, nothing in the air.</summary>
    static readonly Dictionary<string, double> Calm = new(StringComparer.Ordinal)
    {
        ["furnace-1/crown"] = 1150, ["furnace-1/setpoint"] = 1150, ["furnace-1/gas-flow"] = 6, ["furnace-1/flame"] = 1, ["furnace-1/call-for-heat"] = 1, ["furnace-1/lock-out"] = 0,
        ["glory-hole-1/chamber"] = 1180, ["glory-hole-1/gas-flow"] = 8, ["glory-hole-1/flame"] = 1, ["glory-hole-1/call-for-heat"] = 1, ["glory-hole-1/lock-out"] = 0, ["glory-hole-1/door"] = 0,
        ["annealer-1/chamber"] = 480, ["annealer-1/setpoint"] = 480, ["annealer-1/relay"] = 1,
        ["annealer-2/chamber"] = 480, ["annealer-2/setpoint"] = 480, ["annealer-2/power"] = 3,
        ["shop/meter"] = 4321, ["shop/mains"] = 1, ["shop/carbon-monoxide"] = 2, ["shop/combustible-gas"] = 0,
    };

    Sensors(StudioConfiguration studio)
    {
        this.studio = studio;
        foreach (var appliance in studio.Appliances)
            foreach (var channel in appliance.Channels) values[$"{appliance.Id}/{channel.Id}"] = Calm[$"{appliance.Id}/{channel.Id}"];
    }

    public double this[string channel]
    {
        set
        {
            Assert.Contains(channel, Calm.Keys);
            values[channel] = value;
        }
    }

    public static async Task<Sensors> Connect(StudioConfiguration studio)
    {
        var sensors = new Sensors(studio);
        var port = int.Parse(studio.Broker.Listen.Split(':')[1], CultureInfo.InvariantCulture);
        foreach (var appliance in studio.Appliances)
        {
            var device = sensors.devices[appliance.Id] = new MqttClientFactory().CreateMqttClient();
            await Patience.For(device.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithClientId($"{appliance.Id}-sensor").Build()));
        }
        return sensors;
    }

    /// <summary>Nothing more comes from whatever begins with this: a device that died.</summary>
    public void Silence(string start)
    {
        foreach (var channel in values.Keys.Where(c => c.StartsWith(start, StringComparison.Ordinal)).ToList()) values.Remove(channel);
    }

    /// <summary>Every sensor says what it measures at a moment; done when all of it is acknowledged, so committed.</summary>
    public Task Measure(Instant at) => Task.WhenAll(values.GroupBy(v => v.Key.Split('/')[0]).Select(device => Send(device.Key, [.. device], at)));

    /// <summary>What a device kept while its line was down, in one message.</summary>
    public Task Backlog(string channel, IEnumerable<(Instant At, double Value)> rows) => Send(channel.Split('/')[0], channel.Split('/')[1],
        $"[{string.Join(',', rows.Select(r => string.Create(CultureInfo.InvariantCulture, $$"""{"value":{{r.Value:0.0}},"time":"{{InstantPattern.ExtendedIso.Format(r.At)}}"}""")))}]");

    /// <summary>A log entry, as a button box on the wall would send it.</summary>
    public Task Log(string appliance, string entry) => Send(appliance, "log", entry);

    public async ValueTask DisposeAsync()
    {
        foreach (var device in devices.Values)
        {
            if (device.IsConnected) await device.DisconnectAsync(new MqttClientDisconnectOptions());
            device.Dispose();
        }
    }

    async Task Send(string appliance, KeyValuePair<string, double>[] readings, Instant at)
    {
        var time = InstantPattern.ExtendedIso.Format(at);
        foreach (var (channel, value) in readings)
            await Send(appliance, channel.Split('/')[1], string.Create(CultureInfo.InvariantCulture, $$"""{"value":{{value}},"time":"{{time}}"}"""));
    }

    async Task Send(string appliance, string channel, string payload)
    {
        var message = new MqttApplicationMessageBuilder().WithTopic($"{studio.Broker.Prefix}/{studio.Site}/{appliance}/{channel}").WithPayload(payload)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
        var answer = await Patience.For(devices[appliance].PublishAsync(message, TestContext.Current.CancellationToken));
        Assert.True(answer.IsSuccess, $"{appliance}/{channel} was not taken: {answer.ReasonCode} {answer.ReasonString}");
    }
}
