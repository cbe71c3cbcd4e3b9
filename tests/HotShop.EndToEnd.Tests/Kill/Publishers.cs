using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>Steady steps: so many messages each twentieth of a second. Without it a broker drops a client that floods it.</summary>
sealed class Pace(int perSecond) : IDisposable
{
    readonly PeriodicTimer timer = new(TimeSpan.FromMilliseconds(50), new RealClock());
    int left = Math.Max(1, perSecond / 20);

    public async Task Step()
    {
        if (left-- > 0) return;
        left = Math.Max(1, perSecond / 20) - 1;
        await timer.WaitForNextTickAsync(TestContext.Current.CancellationToken);
    }

    public void Dispose() => timer.Dispose();
}

static class CommandLinePublisher
{
    /// <summary>Publishes with <c>mosquitto_pub -l</c>, one process a topic, at a steady pace.</summary>
    public static async Task Publish(Mosquitto broker, TimedReadings readings, int perSecond)
    {
        var publishers = new Dictionary<string, Process>();
        using var pace = new Pace(perSecond);
        foreach (var (topic, payload) in readings.ToPublish())
        {
            await pace.Step();
            if (!publishers.TryGetValue(topic, out var publisher)) publishers[topic] = publisher = Start(broker, topic, publishers.Count);
            await publisher.StandardInput.WriteLineAsync(payload);
        }
        foreach (var publisher in publishers.Values)
        {
            publisher.StandardInput.Close();
            await Patience.For(publisher.WaitForExitAsync());
            Assert.Equal(0, publisher.ExitCode);
            publisher.Dispose();
        }
    }

    static Process Start(Mosquitto broker, string topic, int number) => Process.Start(new ProcessStartInfo(Mosquitto.Find("mosquitto_pub"),
        ["-h", "127.0.0.1", "-p", $"{broker.Port}", "-u", Mosquitto.DeviceUser, "-P", Mosquitto.DevicePassword, "-i", $"device-{number}", "-q", "1", "-t", topic, "-l"]) { RedirectStandardInput = true })!;
}

/// <summary>
/// A device that does what MQTT 3.1.1 (4.4) asks for: whatever was not acknowledged is sent again with DUP after the next connection. Written on a bare socket,
/// because the usual clients do not.
/// </summary>
sealed class ResendingDevice(int port)
{
    const int Window = 20;

    readonly SortedDictionary<int, (string Topic, string Payload)> unacknowledged = [];

    public int Resent { get; private set; }

    public Task Publish(TimedReadings readings, int perSecond) => Publish(readings.ToPublish(), perSecond);

    public async Task Publish(IEnumerable<(string Topic, string Payload)> messages, int perSecond)
    {
        using var pace = new Pace(perSecond);
        using var all = messages.GetEnumerator();
        var number = 0;
        var isMore = all.MoveNext();
        using var retry = new PeriodicTimer(TimeSpan.FromMilliseconds(50), new RealClock());
        while (isMore || unacknowledged.Count > 0)
        {
            try
            {
                using var socket = new TcpClient { NoDelay = true };
                await socket.ConnectAsync(IPAddress.Loopback, port, TestContext.Current.CancellationToken);
                var stream = socket.GetStream();
                await Introduce(stream);
                foreach (var (id, message) in unacknowledged)
                {
                    await Send(stream, id, message, isAgain: true);
                    Resent++;
                }
                while (isMore || unacknowledged.Count > 0)
                {
                    // Reads whatever has come, and waits for it only when the window is full or nothing is left to send.
                    while (unacknowledged.Count > 0 && (stream.DataAvailable || unacknowledged.Count >= Window || !isMore)) await ReadAcknowledgement(stream);
                    if (!isMore) continue;
                    await pace.Step();
                    var id = number++ % 60_000 + 1;
                    unacknowledged[id] = all.Current;
                    isMore = all.MoveNext();
                    await Send(stream, id, unacknowledged[id], isAgain: false);
                }
            }
            catch (Exception gone) when (gone is IOException or SocketException)
            {
                await retry.WaitForNextTickAsync(TestContext.Current.CancellationToken);
            }
        }
    }

    static async Task Introduce(NetworkStream stream)
    {
        var id = "device"u8.ToArray();
        await stream.WriteAsync(new byte[] { 0x10, (byte)(12 + id.Length), 0, 4, (byte)'M', (byte)'Q', (byte)'T', (byte)'T', 4, 0, 0, 0, 0, (byte)id.Length }.Concat(id).ToArray(), TestContext.Current.CancellationToken);
        var answer = new byte[4];
        await stream.ReadExactlyAsync(answer, TestContext.Current.CancellationToken);
        Assert.Equal(0, answer[3]);
    }

    async Task ReadAcknowledgement(NetworkStream stream)
    {
        var answer = new byte[4];
        await stream.ReadExactlyAsync(answer, TestContext.Current.CancellationToken);
        Assert.Equal(0x40, answer[0]);
        unacknowledged.Remove(answer[2] << 8 | answer[3]);
    }

    static async Task Send(NetworkStream stream, int id, (string Topic, string Payload) message, bool isAgain)
    {
        byte[] topic = Encoding.UTF8.GetBytes(message.Topic), payload = Encoding.UTF8.GetBytes(message.Payload);
        var length = 2 + topic.Length + 2 + payload.Length;
        byte[] remaining = length < 128 ? [(byte)length] : [(byte)(length % 128 | 128), (byte)(length / 128)];
        byte[] packet = [(byte)(isAgain ? 0x3A : 0x32), .. remaining, 0, (byte)topic.Length, .. topic, (byte)(id >> 8), (byte)id, .. payload];
        await stream.WriteAsync(packet, TestContext.Current.CancellationToken);
    }
}
