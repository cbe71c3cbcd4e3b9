using System.Threading.Channels;
using HotShop.Simulator.Chance;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace HotShop.Simulator.Broker;

/// <summary>
/// One device's client: sends its messages in order, one after the other, each until the broker has acknowledged it.
/// When the connection is lost it waits longer and longer, comes back with a clean session, and sends what was not acknowledged again.
/// </summary>
internal sealed partial class DeviceConnection(string device, BrokerAddress broker, TimeProvider wall, ILogger log)
{
    static readonly TimeSpan ShortestWait = TimeSpan.FromMilliseconds(200), LongestWait = TimeSpan.FromSeconds(15), AcknowledgeWithin = TimeSpan.FromSeconds(20);

    readonly Channel<DeviceMessage> queue = Channel.CreateUnbounded<DeviceMessage>(new() { SingleReader = true, SingleWriter = true });
    readonly Draws jitter = new(Environment.ProcessId, device);
    int waiting, attempts;
    long acknowledged, refused;

    public int Waiting => Volatile.Read(ref waiting);

    public long Acknowledged => Interlocked.Read(ref acknowledged);

    /// <summary>Messages that the broker said it would never take from this device.</summary>
    public long Refused => Interlocked.Read(ref refused);

    public void Enqueue(DeviceMessage message)
    {
        Interlocked.Increment(ref waiting);
        queue.Writer.TryWrite(message);
    }

    /// <summary>No more messages come; <see cref="RunAsync"/> ends when the last is acknowledged.</summary>
    public void Complete() => queue.Writer.TryComplete();

    public async Task RunAsync(CancellationToken stop)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        while (await queue.Reader.WaitToReadAsync(stop))
        {
            while (queue.Reader.TryPeek(out var message))
            {
                await ConnectAsync(client, stop);
                if (!await TrySendAsync(client, message, stop)) continue;
                queue.Reader.TryRead(out _);
                Interlocked.Decrement(ref waiting);
            }
        }

        await client.TryDisconnectAsync();
    }

    async Task ConnectAsync(IMqttClient client, CancellationToken stop)
    {
        while (!client.IsConnected)
        {
            string reason;
            try
            {
                var result = await client.ConnectAsync(Options(), stop);
                if (result.ResultCode == MqttClientConnectResultCode.Success)
                {
                    attempts = 0;
                    return;
                }

                reason = result.ResultCode.ToString();
            }
            catch (Exception failure) when (!stop.IsCancellationRequested)
            {
                reason = failure.GetBaseException().Message;
            }

            await WaitAsync(reason, stop);
        }
    }

    /// <returns>True when the message is settled: acknowledged, or refused for good.</returns>
    async Task<bool> TrySendAsync(IMqttClient client, DeviceMessage message, CancellationToken stop)
    {
        try
        {
            var result = await client.PublishAsync(new MqttApplicationMessageBuilder()
                .WithTopic(message.Topic).WithPayload(message.Payload).WithRetainFlag(message.Retain)
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build(), stop);
            if (result.IsSuccess)
            {
                Interlocked.Increment(ref acknowledged);
                return true;
            }

            if (result.ReasonCode is MqttClientPublishReasonCode.NotAuthorized or MqttClientPublishReasonCode.TopicNameInvalid or MqttClientPublishReasonCode.PayloadFormatInvalid)
            {
                if (Interlocked.Increment(ref refused) == 1) BrokerRefuses(device, message.Topic, result.ReasonCode.ToString());
                return true;
            }

            await WaitAsync(result.ReasonCode.ToString(), stop);
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            await client.TryDisconnectAsync();
            await WaitAsync(failure.GetBaseException().Message, stop);
        }

        return false;
    }

    /// <summary>
    /// Doubles the wait with every failure in a row, less up to a half by chance so that five devices do not knock together.
    /// </summary>
    async Task WaitAsync(string reason, CancellationToken stop)
    {
        attempts++;
        var longest = Math.Min(LongestWait.TotalSeconds, ShortestWait.TotalSeconds * Math.Pow(2, Math.Min(attempts - 1, 10)));
        if (attempts == 1) CannotSend(device, broker.Host, broker.Port, reason);
        await Task.Delay(TimeSpan.FromSeconds(longest * jitter.Between(0.5, 1)), wall, stop);
    }

    MqttClientOptions Options()
    {
        var builder = new MqttClientOptionsBuilder()
            .WithTcpServer(broker.Host, broker.Port).WithClientId(device).WithProtocolVersion(MqttProtocolVersion.V500)
            .WithCleanStart(true).WithKeepAlivePeriod(TimeSpan.FromSeconds(30)).WithTimeout(AcknowledgeWithin);
        return broker.LoginOf(device) is var (user, password) ? builder.WithCredentials(user, password).Build() : builder.Build();
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Device} cannot send to {Host}:{Port}: {Reason}; it keeps its messages and tries again")]
    private partial void CannotSend(string device, string host, int port, string reason);

    [LoggerMessage(Level = LogLevel.Error, Message = "The broker refuses {Device} on {Topic}: {Reason}; such messages are dropped")]
    private partial void BrokerRefuses(string device, string topic, string reason);
}
