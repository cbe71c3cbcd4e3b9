using System.Text.Json;
using System.Text.Json.Serialization;

namespace HotShop.Monitor.Configuration;

/// <summary>Reads <c>hotshop.json</c>: comments and trailing commas are fine, unknown keys are not.</summary>
public static class ConfigurationFile
{
    public const string UsualName = "hotshop.json";

    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        NumberHandling = JsonNumberHandling.Strict,
        WriteIndented = true,
    };

    /// <returns>The configuration, checked.</returns>
    /// <exception cref="ConfigurationException">The file is missing, unreadable or wrong; each problem in one line.</exception>
    public static StudioConfiguration Read(string path)
    {
        if (!File.Exists(path))
            throw new ConfigurationException([new(path, "no such file", "write one with 'hotshop init', or name another with --config FILE")]);
        var configuration = Parse(File.ReadAllText(path), path);
        var problems = ConfigurationCheck.Problems(configuration, path);
        return problems.Count == 0 ? configuration : throw new ConfigurationException(problems);
    }

    /// <exception cref="ConfigurationException">The text is no JSON, or has a key or type the configuration does not know.</exception>
    public static StudioConfiguration Parse(string text, string path)
    {
        try
        {
            return JsonSerializer.Deserialize<StudioConfiguration>(text.Replace("\"$schema\"", "\"schema\"", StringComparison.Ordinal), Json)
                ?? throw new ConfigurationException([new(path, "the file holds only 'null'", "start from what 'hotshop init' writes")]);
        }
        catch (JsonException wrong)
        {
            var where = wrong.LineNumber is { } line ? $"{path}, line {line + 1}" : path;
            var at = string.IsNullOrEmpty(wrong.Path) || wrong.Path == "$" ? "" : $" at {wrong.Path}";
            throw new ConfigurationException([new(where + at, Plain(wrong.Message), "see hotshop.schema.json beside the file, or the manual")]);
        }
    }

    static string Plain(string message)
    {
        var cut = message.IndexOf(" Path:", StringComparison.Ordinal);
        var text = cut > 0 ? message[..cut] : message;
        return text.Replace("The JSON property '", "unknown key '", StringComparison.Ordinal)
            .Replace("' could not be mapped to any .NET member contained in type 'HotShop.Monitor.Configuration.", "' in ", StringComparison.Ordinal)
            .TrimEnd('.', '\'');
    }
}
