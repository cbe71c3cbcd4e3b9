using System.Net;
using System.Net.Sockets;

namespace HotShop.Monitor.Commands;

static class PagesPort
{
    /// <summary>
    /// Looks before anything is started: a server that finds its port taken brings half a service down with it, and its pages of traces hide the one line that matters.
    /// </summary>
    /// <param name="listen">Address and port.</param>
    /// <param name="advice">How to choose another.</param>
    /// <exception cref="IOException">Taken, or not to be had.</exception>
    public static void Check(string listen, string advice)
    {
        try
        {
            using var probe = new TcpListener(IPEndPoint.Parse(listen));
            probe.Start();
        }
        catch (SocketException taken)
        {
            throw new IOException($"cannot show pages at {listen}: {taken.Message}. Is the service, or a demo, running already? End it, or {advice}", taken);
        }
    }
}
