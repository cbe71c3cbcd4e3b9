using System.Security.Cryptography;

namespace HotShop.Monitor.Broker;

/// <summary>What an outside broker knows this store by, in small files beside it: the client id, and the topics its session is subscribed to.</summary>
/// <remarks>The id is made once and kept for ever: under another id the broker would queue for the old one, and what it queued would be lost.</remarks>
sealed class BrokerMemory(string dataDirectory)
{
    readonly string idFile = Path.Combine(dataDirectory, "broker-client-id");
    readonly string topicsFile = Path.Combine(dataDirectory, "broker-subscriptions");

    /// <summary>18 characters: brokers of 3.1.1 may refuse more than 23.</summary>
    public string ClientId()
    {
        if (File.Exists(idFile) && File.ReadAllText(idFile).Trim() is { Length: > 0 } known) return known;
        var made = $"hotshop-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(5))}";
        Write(idFile, made);
        return made;
    }

    /// <summary>Filters subscribed to earlier that the configuration no longer has: the session would go on delivering them.</summary>
    public IReadOnlyList<string> NoLongerWanted(IEnumerable<string> wanted) =>
        File.Exists(topicsFile) ? [.. File.ReadAllLines(topicsFile).Where(t => t.Length > 0).Except(wanted, StringComparer.Ordinal)] : [];

    public void Subscribed(IEnumerable<string> filters) => Write(topicsFile, string.Join('\n', filters));

    static void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var fresh = path + ".new";
        using (var file = new StreamWriter(File.Create(fresh)))
        {
            file.Write(text + "\n");
            file.Flush();
            // Renamed before it is on the disk, the file could be empty after a power cut.
            ((FileStream)file.BaseStream).Flush(flushToDisk: true);
        }
        File.Move(fresh, path, overwrite: true);
    }
}
