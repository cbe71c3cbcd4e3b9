using System.Net;
using System.Net.Sockets;

namespace HotShop.EndToEnd.Tests.Running;

static class Ports
{
    /// <summary>A port of this machine that nobody listens on.</summary>
    public static int Free()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
