using System.Net;
using System.Net.Sockets;
using System.Text;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>MQTT 3.1.1 on a bare socket, for what a client library does not let a test do: DUP, packet numbers, many in flight.</summary>
sealed class RawDevice : IDisposable
{
    readonly TcpClient socket = new() { NoDelay = true };

    RawDevice() { }

    public bool HasAnswer => socket.GetStream().DataAvailable;

    public static async Task<RawDevice> Connect(int port, byte keepAliveSeconds = 60)
    {
        var device = new RawDevice();
        await device.socket.ConnectAsync(IPAddress.Loopback, port, TestContext.Current.CancellationToken);
        // CONNECT (3.1), clean session, client id 'd'; CONNACK (3.2) with return code 0.
        await device.Write([0x10, 13, 0, 4, (byte)'M', (byte)'Q', (byte)'T', (byte)'T', 4, 2, 0, keepAliveSeconds, 0, 1, (byte)'d']);
        Assert.Equal([0x20, 2, 0, 0], await device.Answer(4));
        return device;
    }

    /// <summary>PUBLISH (3.3) with QoS 1. Topic and payload together below 120 bytes.</summary>
    public Task Publish(string topic, string payload, int id, bool isAgain = false)
    {
        byte[] topicBytes = Encoding.UTF8.GetBytes(topic), payloadBytes = Encoding.UTF8.GetBytes(payload);
        return Write([(byte)(isAgain ? 0x3A : 0x32), (byte)(2 + topicBytes.Length + 2 + payloadBytes.Length), 0, (byte)topicBytes.Length, .. topicBytes, (byte)(id >> 8), (byte)id, .. payloadBytes]);
    }

    /// <summary>SUBSCRIBE (3.8) with QoS 0.</summary>
    public async Task Subscribe(string filter)
    {
        var bytes = Encoding.UTF8.GetBytes(filter);
        await Write([0x82, (byte)(2 + 2 + bytes.Length + 1), 0, 1, 0, (byte)bytes.Length, .. bytes, 0]);
        Assert.Equal([0x90, 3, 0, 1, 0], await Answer(5));
    }

    public async Task<byte[]> Answer(int bytes)
    {
        var answer = new byte[bytes];
        await Patience.For(socket.GetStream().ReadExactlyAsync(answer, TestContext.Current.CancellationToken).AsTask());
        return answer;
    }

    Task Write(byte[] packet) => socket.GetStream().WriteAsync(packet, TestContext.Current.CancellationToken).AsTask();

    public void Dispose() => socket.Dispose();
}
