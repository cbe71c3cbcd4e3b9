using System.Text.RegularExpressions;

namespace HotShop.EndToEnd.Tests.Running;

/// <summary>The log that a service has written into its data folder.</summary>
static partial class ServiceLog
{
    /// <returns>Every line logged as an error or worse.</returns>
    public static IReadOnlyList<string> Errors(string dataDirectory)
    {
        var folder = new DirectoryInfo(Path.Combine(dataDirectory, "logs"));
        return folder.Exists ? [.. folder.GetFiles("*.log").SelectMany(f => Lines(f.FullName)).Where(l => Error().IsMatch(l))] : [];
    }

    static IEnumerable<string> Lines(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var text = new StreamReader(file);
        while (text.ReadLine() is { } line) yield return line;
    }

    [GeneratedRegex(@"\[(ERR|FTL)\]")]
    private static partial Regex Error();
}
