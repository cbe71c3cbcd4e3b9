using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Broker;

/// <summary>Users of the embedded broker with their passwords, read once at start.</summary>
sealed class DevicePasswords
{
    readonly Dictionary<string, (byte[] Hash, DeviceAccess Access)> known = new(StringComparer.Ordinal);
    readonly byte[] nobody = RandomNumberGenerator.GetBytes(32);

    DevicePasswords() { }

    /// <exception cref="ConfigurationException">A password file is missing, unreadable or empty.</exception>
    public static DevicePasswords Read(IReadOnlyList<DeviceCredential> devices, string baseDirectory, ChannelDirectory channels)
    {
        var passwords = new DevicePasswords();
        var problems = new List<ConfigurationProblem>();
        for (var i = 0; i < devices.Count; i++)
        {
            var where = $"broker.devices[{i}].passwordFile";
            if (SecretFile.Read(devices[i].PasswordFile, baseDirectory, where, problems) is { } password)
                passwords.known[devices[i].User] = (Hash(password), DeviceAccess.Of(devices[i], channels));
        }
        return problems.Count == 0 ? passwords : throw new ConfigurationException(problems);
    }

    /// <summary>Null where user or password are wrong; takes as long for a user that is not there.</summary>
    public DeviceAccess? Check(string? user, byte[]? password)
    {
        var (hash, access) = known.TryGetValue(user ?? "", out var found) ? found : (nobody, null);
        return CryptographicOperations.FixedTimeEquals(hash, SHA256.HashData(password ?? [])) ? access : null;
    }

    static byte[] Hash(string password) => SHA256.HashData(Encoding.UTF8.GetBytes(password));
}
