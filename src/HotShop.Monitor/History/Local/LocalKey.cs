using System.Security.Cryptography;
using System.Text.Json;

namespace HotShop.Monitor.History.Local;

/// <summary>
/// How a command on this computer reaches the service that has the store: the address, and a key that only those can read who may read the data folder.
/// Made anew at each start, in <c>local.json</c>, readable by the service's user alone.
/// </summary>
sealed record LocalKey(string Address, string Key)
{
    const string FileName = "local.json";

    public const string Header = "Hotshop-Local-Key";

    public static LocalKey Make(string address) => new(address, Convert.ToHexString(RandomNumberGenerator.GetBytes(32)));

    public bool Is(string? offered) => offered is not null
        && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(offered), System.Text.Encoding.UTF8.GetBytes(Key));

    public void Write(string dataDirectory)
    {
        var path = PathIn(dataDirectory);
        var how = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) how.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        File.Delete(path);
        using var file = new FileStream(path, how);
        JsonSerializer.Serialize(file, this, JsonSerializerOptions.Web);
    }

    /// <returns>Null where no service has left its key.</returns>
    /// <exception cref="UnauthorizedAccessException">The file is another user's.</exception>
    public static LocalKey? Read(string dataDirectory)
    {
        try
        {
            return JsonSerializer.Deserialize<LocalKey>(File.ReadAllText(PathIn(dataDirectory)), JsonSerializerOptions.Web);
        }
        catch (Exception absent) when (absent is FileNotFoundException or DirectoryNotFoundException or JsonException)
        {
            return null;
        }
    }

    public static void Remove(string dataDirectory) => File.Delete(PathIn(dataDirectory));

    static string PathIn(string dataDirectory) => Path.Combine(dataDirectory, FileName);
}
