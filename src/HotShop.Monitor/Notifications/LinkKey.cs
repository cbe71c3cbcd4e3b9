using System.Security.Cryptography;

namespace HotShop.Monitor.Notifications;

/// <summary>The secret that signs links: 32 random bytes in the data folder, readable by the service alone.</summary>
sealed class LinkKey
{
    public const int Bytes = 32;
    readonly byte[] secret;

    public LinkKey(byte[] secret)
    {
        if (secret.Length < Bytes) throw new ArgumentException($"a link key has at least {Bytes} bytes, not {secret.Length}", nameof(secret));
        this.secret = secret;
        Id = Convert.ToHexStringLower(SHA256.HashData(secret))[..8];
    }

    /// <summary>Names the key inside a token without giving it away.</summary>
    public string Id { get; }

    public byte[] Sign(ReadOnlySpan<byte> payload) => Sign(secret, payload);

    /// <summary>HMAC-SHA256 (RFC 2104 with FIPS 180-4).</summary>
    internal static byte[] Sign(ReadOnlySpan<byte> secret, ReadOnlySpan<byte> payload) => HMACSHA256.HashData(secret, payload);

    /// <summary>Reads the key, or makes one where there is none.</summary>
    /// <exception cref="InvalidDataException">The file is there but is no key.</exception>
    public static LinkKey Load(string dataDirectory)
    {
        var path = Path.Combine(dataDirectory, "night-link.key");
        Directory.CreateDirectory(dataDirectory);
        if (!File.Exists(path)) Make(path);
        var bytes = File.ReadAllBytes(path);
        return bytes.Length == Bytes
            ? new(bytes)
            : throw new InvalidDataException($"{path} holds {bytes.Length} bytes, not {Bytes}: delete it, a new one is made (links already sent then stop working)");
    }

    static void Make(string path)
    {
        // Written aside and moved, so that a power cut leaves a whole key or none.
        var aside = $"{path}.new";
        var how = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new FileStream(aside, how))
        {
            file.Write(RandomNumberGenerator.GetBytes(Bytes));
            file.Flush(flushToDisk: true);
        }
        File.Move(aside, path, overwrite: true);
    }
}
