using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Broker;

/// <summary>A password in a file of its own: its first line.</summary>
static class SecretFile
{
    /// <returns>Null with a problem added where there is none.</returns>
    public static string? Read(string path, string baseDirectory, string where, ICollection<ConfigurationProblem> problems)
    {
        var full = Path.GetFullPath(path, baseDirectory);
        try
        {
            if (File.ReadLines(full).FirstOrDefault() is { Length: > 0 } password) return password;
            problems.Add(new(where, $"{full} is empty", "write the password into its first line"));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            problems.Add(new(where, $"{full} cannot be read ({failure.Message.TrimEnd('.')})", "write the password into its first line and let the service's user read it"));
        }
        return null;
    }
}
