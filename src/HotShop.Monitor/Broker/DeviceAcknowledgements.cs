using System.Threading.Channels;
using MQTTnet.Adapter;
using MQTTnet.Packets;
using MQTTnet.Protocol;

namespace HotShop.Monitor.Broker;

/// <summary>
/// Acknowledges the messages of one device's connection in the order they came (MQTT 3.1.1, 4.6), each after its commit. The connection goes on taking messages meanwhile:
/// one that waited for every commit by itself would bring 30 readings a second over a slow disk.
/// </summary>
/// <remarks>
/// The library acknowledges a QoS 1 message when its publish hook returns. So the message is handed to it as QoS 0 (<see cref="TakeOver"/>), and the acknowledgement goes out from here.
/// Both hooks run in the connection's one receiving loop, which is what makes <see cref="Now"/> safe.
/// </remarks>
sealed class DeviceAcknowledgements(IMqttChannelAdapter connection, Action<Exception, MqttQualityOfServiceLevel, string> notAccepted)
{
    /// <summary>Messages taken and not yet stored; behind them the device waits.</summary>
    const int MostWaiting = 500;

    readonly Channel<Waiting> waiting = Channel.CreateBounded<Waiting>(new BoundedChannelOptions(MostWaiting) { SingleReader = true, SingleWriter = true });
    Task? sending;

    /// <summary>The QoS 1 message that the receiving loop is at.</summary>
    public Current? Now { get; private set; }

    public void TakeOver(MqttPublishPacket publish)
    {
        Now = publish.QualityOfServiceLevel == MqttQualityOfServiceLevel.AtLeastOnce ? new Current(publish.PacketIdentifier) : null;
        if (Now is not null) publish.QualityOfServiceLevel = MqttQualityOfServiceLevel.AtMostOnce;
    }

    /// <summary>Acknowledges the message when its turn has come and it is accepted; waits only while too many are waiting.</summary>
    public async Task Add(Task accepted, MqttQualityOfServiceLevel sentWith, string topic, MqttPubAckReasonCode result = MqttPubAckReasonCode.Success, string? reason = null)
    {
        sending ??= Send();
        var answer = Now is { } current ? new MqttPubAckPacket { PacketIdentifier = current.PacketIdentifier, ReasonCode = result, ReasonString = reason } : null;
        Now = null;
        try
        {
            await waiting.Writer.WriteAsync(new Waiting(accepted, answer, sentWith, topic));
        }
        catch (ChannelClosedException)
        {
            // A last will comes after the end of its connection: it is taken, and there is nobody to tell.
        }
    }

    /// <summary>The connection is gone.</summary>
    public void End() => waiting.Writer.TryComplete();

    async Task Send()
    {
        var isClosed = false;
        await foreach (var (accepted, answer, sentWith, topic) in waiting.Reader.ReadAllAsync())
        {
            try
            {
                await accepted;
                if (answer is not null && !isClosed) await connection.SendPacketAsync(answer, CancellationToken.None);
            }
            catch (Exception) when (accepted.IsCompletedSuccessfully)
            {
                // The device has gone: it sends again what it has not seen acknowledged, and the store knows it.
                isClosed = true;
            }
            catch (Exception failure)
            {
                notAccepted(failure, sentWith, topic);
                if (answer is null || isClosed) continue;
                isClosed = true;
                await Close();
            }
        }
    }

    async Task Close()
    {
        try
        {
            await connection.DisconnectAsync(CancellationToken.None);
        }
        catch (Exception)
        {
            // It was closed from the other side already; the library throws what it happens to trip over.
        }
    }

    /// <param name="PacketIdentifier">As the device numbered it.</param>
    internal sealed record Current(ushort PacketIdentifier);

    sealed record Waiting(Task Accepted, MqttPubAckPacket? Answer, MqttQualityOfServiceLevel SentWith, string Topic);
}
