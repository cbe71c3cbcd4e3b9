using System.Net;

namespace HotShop.Monitor.Web.Access;

/// <summary>
/// Which names the pages answer to. A page of somebody else whose name suddenly points at this machine (DNS rebinding) would otherwise be
/// "same origin" with the pages; such an attack needs a name, so addresses written as numbers are let through where the service listens.
/// </summary>
sealed class HostCheck
{
    readonly HashSet<string> names = new(StringComparer.OrdinalIgnoreCase) { "localhost" };
    readonly bool isLoopbackOnly;

    public HostCheck(AccessOptions options)
    {
        isLoopbackOnly = options.IsLoopbackOnly;
        names.Add(options.ListenHost);
        if (options.PublicAddress is { } address) names.Add(address.Host);
        foreach (var host in options.Http.AllowedHosts) names.Add(host.Trim('[', ']'));
        if (isLoopbackOnly) return;
        names.Add(Environment.MachineName);
        names.Add($"{Environment.MachineName}.local");
    }

    /// <param name="host">Host header, with or without port.</param>
    public bool Allows(HostString host)
    {
        if (!host.HasValue || host.Host.Length == 0) return false;
        var name = host.Host.Trim('[', ']').TrimEnd('.');
        if (names.Contains(name)) return true;
        return IPAddress.TryParse(name, out var address) && (IPAddress.IsLoopback(address) || !isLoopbackOnly);
    }
}
