using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Text;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace HotShop.Simulator.Tests.Broker;

/// <summary>A real broker on loopback that keeps what it acknowledged. It can be stopped and started again on its port.</summary>
internal sealed class TestBroker : IAsyncDisposable
{
    readonly object gate = new();
    readonly List<(string Device, string Topic, string Payload)> received = [];
    MqttServer? server;

    public int Port { get; } = FreePort();

    /// <summary>Decides on user and password; everybody may in when not set.</summary>
    public Func<string?, string?, bool>? Admits { get; init; }

    /// <summary>Called for every message before it is acknowledged; false makes the broker drop the connection instead.</summary>
    public Func<int, bool>? Takes { get; set; }

    public IReadOnlyList<(string Device, string Topic, string Payload)> Received
    {
        get
        {
            lock (gate) return [.. received];
        }
    }

    public async Task StartAsync()
    {
        server = new MqttServerFactory().CreateMqttServer(new MqttServerOptionsBuilder()
            .WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(IPAddress.None)
            .WithDefaultEndpointPort(Port).Build());
        server.ValidatingConnectionAsync += e =>
        {
            if (Admits?.Invoke(e.UserName, e.Password) == false) e.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
            return Task.CompletedTask;
        };
        server.InterceptingPublishAsync += e =>
        {
            lock (gate)
            {
                if (Takes?.Invoke(received.Count) == false) e.CloseConnection = true;
                else received.Add((e.ClientId, e.ApplicationMessage.Topic, Encoding.UTF8.GetString(e.ApplicationMessage.Payload.ToArray())));
            }

            return Task.CompletedTask;
        };
        await server.StartAsync();
    }

    public async Task StopAsync()
    {
        if (server is null) return;
        await server.StopAsync(new MqttServerStopOptions());
        server.Dispose();
        server = null;
    }

    public async ValueTask DisposeAsync() => await StopAsync();

    static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
