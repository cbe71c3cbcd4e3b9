using System.Collections.Concurrent;
using System.Text.Json;
using System.Threading.Channels;
using HotShop.Monitor.Configuration;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Broker;

/// <summary>
/// Publishes what the service found out, retained: the latest value per topic. Callers never wait and never fail; while the broker is away the newest value of each topic
/// is kept, and after every connection all are published again.
/// </summary>
sealed partial class MqttOut : BackgroundService
{
    readonly StudioPlan plan;
    readonly IBrokerLink link;
    readonly ILogger<MqttOut> log;
    readonly ConcurrentDictionary<string, byte[]> latest = new(StringComparer.Ordinal);
    readonly ConcurrentDictionary<string, byte[]> unsent = new(StringComparer.Ordinal);
    readonly Channel<bool> wake = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    public MqttOut(StudioPlan plan, IBrokerLink link, ILogger<MqttOut> log)
    {
        (this.plan, this.link, this.log) = (plan, link, log);
        link.Connected += PublishAllAgain;
    }

    /// <summary>Publishes <c>out/APPLIANCE/NAME</c>.</summary>
    /// <param name="value">Null (or not finite): not known, published as null.</param>
    /// <param name="unit">UCUM.</param>
    /// <param name="uncertainty">Half-width of the 95 % interval in the same unit, where it is known.</param>
    public void Value(string appliance, string name, double? value, string unit, Instant at, double? uncertainty = null) =>
        Put(MqttOutTopics.Value(plan, appliance, name),
            JsonSerializer.SerializeToUtf8Bytes(new { value = value is { } known && double.IsFinite(known) ? value : null, unit, time = InstantPattern.ExtendedIso.Format(at), uncertainty }));

    /// <summary>Publishes <c>out/alarms/ID</c>; <c>/</c> in the id becomes <c>-</c>, to keep the topic's depth.</summary>
    public void Alarm(string id, string state, int priority, string text) =>
        Put(MqttOutTopics.Alarm(plan, id), JsonSerializer.SerializeToUtf8Bytes(new { state, priority, text }));

    /// <summary>Takes the alarm's topic away, for alarms that the configuration no longer has.</summary>
    public void Forget(string alarmId) => Put(MqttOutTopics.Alarm(plan, alarmId), []);

    void Put(string topic, byte[] payload)
    {
        if (latest.TryGetValue(topic, out var before) && before.AsSpan().SequenceEqual(payload)) return;
        latest[topic] = payload;
        unsent[topic] = payload;
        wake.Writer.TryWrite(true);
    }

    void PublishAllAgain()
    {
        foreach (var (topic, payload) in latest) unsent.TryAdd(topic, payload);
        wake.Writer.TryWrite(true);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var _ in wake.Reader.ReadAllAsync(stoppingToken))
            foreach (var topic in unsent.Keys)
                if (!link.IsConnected) break;
                else if (unsent.TryRemove(topic, out var payload)) await Send(topic, payload, stoppingToken);
    }

    async Task Send(string topic, byte[] payload, CancellationToken stop)
    {
        try
        {
            await link.Publish(topic, payload, retain: true, stop);
        }
        catch (BrokerLinkException failure)
        {
            // Refused for good: trying again at each connection is soon enough. Otherwise the next connection sends it.
            if (!failure.IsRefused) unsent.TryAdd(topic, payload);
            NotSent(topic, failure);
        }
    }

    public override void Dispose()
    {
        link.Connected -= PublishAllAgain;
        base.Dispose();
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Topic} was not published; it is tried again after the next connection")]
    private partial void NotSent(string topic, Exception failure);
}
