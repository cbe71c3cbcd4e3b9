using System.Net;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Configuration;

static class BrokerCheck
{
    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var broker = configuration.Broker;
        if (broker.Prefix.Length == 0 || broker.Prefix.AsSpan().ContainsAny("#+\0") || broker.Prefix[0] == '$' || broker.Prefix.Trim('/') != broker.Prefix)
            found.Add("broker.prefix", $"'{broker.Prefix}' cannot begin a topic", "leave it out for 'hotshop'");
        switch (broker.Mode)
        {
            case "embedded": Embedded(found, broker, configuration); break;
            case "outside": Outside(found, broker); break;
            default: found.Add("broker.mode", $"'{broker.Mode}' is unknown", "write embedded or outside"); break;
        }
    }

    static void Embedded(ProblemList found, BrokerOptions broker, StudioConfiguration configuration)
    {
        ConfigurationCheck.Endpoint(found, "broker.listen", broker.Listen);
        if (IPEndPoint.TryParse(broker.Listen, out var endpoint) && !IPAddress.IsLoopback(endpoint.Address) && broker.Devices.Count == 0)
            found.Add("broker.devices", $"{broker.Listen} is reachable from the network, but no device has a password",
                "give each device a user and a password file, or listen on 127.0.0.1");
        if (broker.ListenAlso.Count > 0)
            found.Add("broker.listenAlso", "the embedded broker hears all that devices send it", "leave it out, or set broker.mode to outside");
        var users = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < broker.Devices.Count; i++)
        {
            var device = broker.Devices[i];
            if (!users.Add(device.User)) found.Add($"broker.devices[{i}].user", $"'{device.User}' is there twice", "give every device a user of its own");
            foreach (var appliance in device.Appliances)
                if (configuration.Appliances.All(a => a.Id != appliance))
                    found.Add($"broker.devices[{i}].appliances", $"there is no appliance '{appliance}'", "name one of the appliances' ids");
        }
    }

    static void Outside(ProblemList found, BrokerOptions broker)
    {
        if (string.IsNullOrWhiteSpace(broker.Host)) found.Add("broker.host", "an outside broker has no address", "write its host name");
        found.Range("broker.port", broker.Port, 1, 65535);
        for (var i = 0; i < broker.ListenAlso.Count; i++)
            if (TopicFilter.ProblemWith(broker.ListenAlso[i]) is { } problem)
                found.Add($"broker.listenAlso[{i}]", $"'{broker.ListenAlso[i]}': {problem}", "write a filter such as zigbee/# or meters/+/state");
        if (broker.CaFile is not null && !broker.Tls) found.Add("broker.caFile", "there is a certificate authority but no TLS", "set broker.tls to true");
    }
}
