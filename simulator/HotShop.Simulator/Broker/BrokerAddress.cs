using System.Globalization;

namespace HotShop.Simulator.Broker;

/// <summary>Where the devices publish, and as whom.</summary>
/// <param name="User">One name for all devices; <see langword="null"/> connects without.</param>
public sealed record BrokerAddress(string Host, int Port, string? User = null, string? Password = null)
{
    /// <summary>
    /// Passwords of devices that have a login of their own, with the device's name as user. They come before <see cref="User"/>.
    /// </summary>
    public IReadOnlyDictionary<string, string> PasswordsByDevice { get; init; } = new Dictionary<string, string>();

    /// <summary>Reads `host:port`; `[::1]:1883` for an IPv6 address.</summary>
    /// <returns>The address, or what is wrong.</returns>
    public static (BrokerAddress? Address, string? Problem) Parse(string text)
    {
        var colon = text.LastIndexOf(':');
        if (colon <= 0 || !int.TryParse(text.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var port) || port is < 1 or > 65535)
            return (null, $"'{text}' is no address of a broker: write HOST:PORT, such as 127.0.0.1:1883");
        return (new BrokerAddress(text[..colon].Trim('[', ']'), port), null);
    }

    internal (string User, string Password)? LoginOf(string device) =>
        PasswordsByDevice.TryGetValue(device, out var own) ? (device, own) : User is null ? null : (User, Password ?? "");
}
