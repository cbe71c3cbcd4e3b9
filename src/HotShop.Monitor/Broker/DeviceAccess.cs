using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Broker;

/// <summary>Who a connection belongs to, and what it may do. Pure: the rules of the embedded broker.</summary>
/// <remarks>
/// A device publishes for its own appliances: their topics, and the foreign topics that only channels of its appliances listen to. It reads its own appliances and <c>out</c>.
/// Nobody publishes under <c>out</c>: what stands there is the service's word. Without devices in the configuration (loopback only) everybody may do the rest.
/// </remarks>
sealed class DeviceAccess(string? user, IReadOnlySet<string>? appliances, ChannelDirectory channels)
{
    readonly string root = $"{channels.Prefix}/{channels.Site}/";

    public string? User => user;

    public static DeviceAccess Anybody(ChannelDirectory channels) => new(null, null, channels);

    public static DeviceAccess Of(DeviceCredential device, ChannelDirectory channels) => new(device.User, device.Appliances.ToHashSet(StringComparer.Ordinal), channels);

    /// <summary>Null: allowed. Otherwise the reason, for the list of denials and the v5 reason string.</summary>
    public string? DenyPublish(string topic)
    {
        if (topic.StartsWith(root + "out/", StringComparison.Ordinal) || topic == root + "out")
            return $"'{root}out' belongs to the service: publish under {root}APPLIANCE/CHANNEL";
        if (topic.StartsWith('$')) return "topics that begin with '$' belong to the broker";
        if (appliances is null || IsOwn(topic)) return null;
        return $"user '{user}' may publish for {string.Join(", ", appliances.Order(StringComparer.Ordinal))} only: correct the topic, or broker.devices in the configuration";
    }

    public string? DenySubscription(string filter)
    {
        if (filter.StartsWith('$')) return "shared subscriptions and the broker's own topics are not offered";
        // A filter with a wildcard above the appliance's level reaches beyond; below it, what it starts with decides.
        if (appliances is null || IsOwn(filter) || filter.StartsWith(root + "out/", StringComparison.Ordinal)) return null;
        return $"user '{user}' may read {root}out/# and its own appliances only";
    }

    bool IsOwn(string topic)
    {
        if (topic.StartsWith(root, StringComparison.Ordinal))
        {
            var rest = topic.AsSpan(root.Length);
            var slash = rest.IndexOf('/');
            return slash > 0 && appliances!.Contains(rest[..slash].ToString());
        }
        if (channels.Button(topic) is { } button) return appliances!.Contains(button.Appliance);
        var listening = channels.ForTopic(topic);
        return listening.Count > 0 && listening.All(c => appliances!.Contains(c.Appliance));
    }
}
