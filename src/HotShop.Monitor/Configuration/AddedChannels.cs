using System.ComponentModel;
using System.Text.Json;

namespace HotShop.Monitor.Configuration;

/// <summary>A channel that was added on the set-up page, not in <c>hotshop.json</c>.</summary>
public sealed record AddedChannel
{
    [Description("Appliance it belongs to.")]
    public required string Appliance { get; init; }

    public required ChannelOptions Channel { get; init; }

    [Description("When it was added (RFC 3339).")]
    public string? AddedAt { get; init; }

    /// <summary>As the channel is called everywhere: appliance and channel.</summary>
    internal string Id => $"{Appliance}/{Channel.Id}";
}

/// <summary>
/// The channels that people added with a tap: a file of the service's own in the data folder, so that a commented <c>hotshop.json</c> is never rewritten.
/// What <c>hotshop.json</c> says itself goes before it.
/// </summary>
public static class AddedChannels
{
    public const string FileName = "channels-added.json";

    public static string PathIn(string dataDirectory) => Path.Combine(dataDirectory, FileName);

    /// <returns>In the order they were added; none where there is no file.</returns>
    /// <exception cref="ConfigurationException">The file cannot be read: it was damaged or edited.</exception>
    public static IReadOnlyList<AddedChannel> Read(string dataDirectory)
    {
        var path = PathIn(dataDirectory);
        if (!File.Exists(path)) return [];
        try
        {
            return JsonSerializer.Deserialize<List<AddedChannel>>(File.ReadAllText(path), ConfigurationFile.Json) ?? [];
        }
        catch (Exception wrong) when (wrong is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new ConfigurationException([new(path, $"cannot be read ({wrong.Message.TrimEnd('.')})", "mend it, or move it away and add the channels again on the set-up page")]);
        }
    }

    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(string dataDirectory, IReadOnlyList<AddedChannel> channels)
    {
        Directory.CreateDirectory(dataDirectory);
        var path = PathIn(dataDirectory);
        // Aside, through to the disk, and moved: a power cut leaves the old file or the new one.
        using (var file = new FileStream($"{path}.new", FileMode.Create, FileAccess.Write))
        {
            JsonSerializer.Serialize(file, channels, ConfigurationFile.Json);
            file.Flush(flushToDisk: true);
        }
        File.Move($"{path}.new", path, overwrite: true);
    }

    /// <summary>Whether a plan has the channel as it was added; not where <c>hotshop.json</c> has one of that name itself, or has its appliance no more.</summary>
    public static bool InForce(StudioPlan plan, AddedChannel added) =>
        plan.Appliance(added.Appliance)?.Options.Channels.Any(c => Text(c) == Text(added.Channel)) == true;

    /// <summary>What two descriptions say, lists included.</summary>
    static string Text(ChannelOptions channel) => JsonSerializer.Serialize(channel, ConfigurationFile.Json);

    /// <summary>The configuration with the added channels that are in force, not checked.</summary>
    public static StudioConfiguration Merge(StudioConfiguration written, IEnumerable<AddedChannel> added)
    {
        var inForce = added.Where(a => written.Appliances.Any(w => w.Id == a.Appliance && w.Channels.All(c => c.Id != a.Channel.Id))).ToLookup(a => a.Appliance, a => a.Channel, StringComparer.Ordinal);
        return inForce.Count == 0 ? written : written with { Appliances = [.. written.Appliances.Select(a => inForce.Contains(a.Id) ? a with { Channels = [.. a.Channels, .. inForce[a.Id]] } : a)] };
    }
}
