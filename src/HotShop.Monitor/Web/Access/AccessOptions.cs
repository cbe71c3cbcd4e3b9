using System.Net;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Web.Access;

/// <summary>Who may come in, and under which names the pages answer.</summary>
/// <param name="DataDirectory">Where the owner's password (hashed), the paired screens and the keys of the cookies are kept.</param>
/// <param name="IsOpen">For the demo: everybody who reaches the loopback address is the owner. Refused beyond loopback.</param>
public sealed record AccessOptions(string DataDirectory, HttpOptions Http, bool IsOpen = false)
{
    public string Listen => Http.Listen;

    public Uri? PublicAddress => Http.PublicAddress is { } address ? new(address) : null;

    /// <summary>Host part of the listening address, without brackets.</summary>
    public string ListenHost
    {
        get
        {
            var colon = Listen.LastIndexOf(':');
            return (colon < 0 ? Listen : Listen[..colon]).Trim('[', ']');
        }
    }

    public bool IsLoopbackOnly => ListenHost == "localhost" || (IPAddress.TryParse(ListenHost, out var address) && IPAddress.IsLoopback(address));
}

/// <summary>The two rights there are. Both also work as roles.</summary>
public static class AccessPolicies
{
    /// <summary>Everything, money and settings too.</summary>
    public const string Owner = "Owner";

    /// <summary>Owner, or a paired screen: view, log, acknowledge; no money.</summary>
    public const string Screen = "Screen";
}
