using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

namespace HotShop.Monitor.Configuration;

/// <summary>Reads <c>hotshop.json</c>: comments and trailing commas are fine, unknown keys are not.</summary>
public static partial class ConfigurationFile
{
    public const string UsualName = "hotshop.json";

    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        NumberHandling = JsonNumberHandling.Strict,
        RespectNullableAnnotations = true,
        AllowDuplicateProperties = false,
        WriteIndented = true,
    };

    /// <returns>The configuration with the channels that were added on the set-up page, checked.</returns>
    /// <exception cref="ConfigurationException">The file is missing, unreadable or wrong; each problem in one line.</exception>
    public static StudioConfiguration Read(string path)
    {
        var written = ReadWritten(path);
        var dataDirectory = Path.GetFullPath(written.DataDirectory, Path.GetDirectoryName(Path.GetFullPath(path))!);
        var merged = AddedChannels.Merge(written, AddedChannels.Read(dataDirectory));
        var problems = ReferenceEquals(merged, written) ? [] : ConfigurationCheck.Problems(merged, AddedChannels.PathIn(dataDirectory));
        return problems.Count == 0 ? merged : throw new ConfigurationException(problems);
    }

    /// <returns>What the file itself says, checked.</returns>
    /// <exception cref="ConfigurationException">As <see cref="Read"/>.</exception>
    public static StudioConfiguration ReadWritten(string path)
    {
        if (!File.Exists(path))
            throw new ConfigurationException([new(path, "no such file", "write one with 'hotshop init', or name another with --config FILE")]);
        var configuration = Parse(Text(path), path);
        var problems = ConfigurationCheck.Problems(configuration, path);
        return problems.Count == 0 ? configuration : throw new ConfigurationException(problems);
    }

    static string Text(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new ConfigurationException([new(path, $"cannot be read ({wrong.Message})", "let the service's user read it")]);
        }
    }

    /// <exception cref="ConfigurationException">The text is no JSON, or has a key or type the configuration does not know.</exception>
    public static StudioConfiguration Parse(string text, string path)
    {
        try
        {
            NoHoles(text, path);
            return JsonSerializer.Deserialize<StudioConfiguration>(text.Replace("\"$schema\"", "\"schema\"", StringComparison.Ordinal), Json)
                ?? throw new ConfigurationException([new(path, "the file holds only 'null'", "start from what 'hotshop init' writes")]);
        }
        catch (JsonException wrong)
        {
            var where = wrong.LineNumber is { } line ? $"{path}, line {line + 1}" : path;
            var at = string.IsNullOrEmpty(wrong.Path) || wrong.Path == "$" ? "" : $" at {wrong.Path}";
            throw new ConfigurationException([new(where + at, Plain(wrong.Message), "see hotshop.schema.json beside the file, or README.md")]);
        }
    }

    /// <summary>An empty place in a list is a slip that no type notices.</summary>
    static void NoHoles(string text, string path)
    {
        using var document = JsonDocument.Parse(text, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
        var holes = Holes(document.RootElement, "").Select(where => new ConfigurationProblem($"{path}: {where}", "it is null", "take it out, or write what belongs there")).ToList();
        if (holes.Count > 0) throw new ConfigurationException(holes);
    }

    static IEnumerable<string> Holes(JsonElement element, string at) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p =>
            p.Value.ValueKind == JsonValueKind.Null && at.EndsWith("alarms", StringComparison.Ordinal) ? [$"{at}.{p.Name}"] : Holes(p.Value, at.Length == 0 ? p.Name : $"{at}.{p.Name}")),
        JsonValueKind.Array => element.EnumerateArray().SelectMany((e, i) => e.ValueKind == JsonValueKind.Null ? [$"{at}[{i}]"] : Holes(e, $"{at}[{i}]")),
        _ => [],
    };

    [GeneratedRegex("^JSON deserialization for type '.*' was missing required properties including: (.*)$")]
    private static partial Regex Missing();

    [GeneratedRegex("^The JSON property '(.*)' could not be mapped to any .NET member contained in type .*$")]
    private static partial Regex Unknown();

    [GeneratedRegex("^The property or field '(.*)' on type .* doesn't allow setting null values.*$")]
    private static partial Regex Null();

    [GeneratedRegex("^Duplicate property '(.*)' encountered.*$")]
    private static partial Regex Twice();

    [GeneratedRegex("^The JSON value could not be converted to .*?(String|Double|Int32|Decimal|Boolean|List|Dictionary|[A-Za-z]+)(`.*)?$")]
    private static partial Regex OtherType();

    /// <summary>What the reader says, without the names of its types.</summary>
    static string Plain(string message)
    {
        // The reader ends with its own place, after " Path:" or " LineNumber:"; ours stands before the message.
        var cut = message.IndexOf(" Path:", StringComparison.Ordinal);
        if (cut < 0) cut = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        var text = (cut > 0 ? message[..cut] : message).TrimEnd('.', ' ', '|');
        text = Missing().Replace(text, "missing: $1");
        text = Unknown().Replace(text, "unknown key '$1'");
        text = Null().Replace(text, "'$1' is null");
        text = Twice().Replace(text, "'$1' is there twice");
        return OtherType().Replace(text, m => "expected " + m.Groups[1].Value switch
        {
            "String" => "text in quotes",
            "Double" or "Decimal" => "a number",
            "Int32" => "a whole number",
            "Boolean" => "true or false",
            "List" => "a list in [ ]",
            _ => "an object in { }",
        });
    }
}
