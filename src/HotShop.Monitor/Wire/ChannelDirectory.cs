namespace HotShop.Monitor.Wire;

/// <summary>Finds the channel a topic belongs to; built once from the configuration in force.</summary>
public sealed class ChannelDirectory
{
    readonly Dictionary<string, List<ChannelPlan>> byTopic = [];
    readonly Dictionary<string, ChannelPlan> byId = [];
    readonly Dictionary<string, ButtonPlan> buttons;
    readonly IReadOnlyList<string> listenAlso;
    readonly string root;

    /// <param name="prefix">First level of the topics, usually <c>hotshop</c>.</param>
    /// <param name="site">Second level: the site's id.</param>
    /// <param name="listenAlso">Filters of an outside broker's topics that are listened to whether or not a channel wants them.</param>
    public ChannelDirectory(
        string prefix, string site, IEnumerable<string> appliances, IEnumerable<ChannelPlan> channels, IEnumerable<ButtonPlan>? buttons = null, IEnumerable<string>? listenAlso = null)
    {
        this.listenAlso = [.. listenAlso ?? []];
        root = $"{prefix}/{site}/";
        this.buttons = (buttons ?? []).ToDictionary(b => b.Topic, StringComparer.Ordinal);
        Prefix = prefix;
        Site = site;
        Appliances = appliances.ToHashSet(StringComparer.Ordinal);
        foreach (var channel in channels)
        {
            byId.Add(channel.Id, channel);
            if (!byTopic.TryGetValue(channel.Topic, out var list)) byTopic[channel.Topic] = list = [];
            list.Add(channel);
        }
    }

    public string Prefix { get; }
    public string Site { get; }
    public IReadOnlySet<string> Appliances { get; }
    public IReadOnlyCollection<ChannelPlan> All => byId.Values;

    /// <summary>Channels listening to a topic: usually one; a foreign device's bundle may feed several.</summary>
    public IReadOnlyList<ChannelPlan> ForTopic(string topic) => byTopic.TryGetValue(topic, out var list) ? list : [];

    /// <summary>The button that publishes on a topic.</summary>
    public ButtonPlan? Button(string topic) => buttons.GetValueOrDefault(topic);

    public ChannelPlan? Find(string id) => byId.GetValueOrDefault(id);

    /// <summary>The topic is one of this site's own, by its first two levels.</summary>
    public bool IsOwn(string topic) => topic.StartsWith(root, StringComparison.Ordinal);

    /// <summary>A foreign topic that comes in because somebody asked for more than the channels need.</summary>
    public bool IsOnlyListenedTo(string topic) => !IsOwn(topic) && listenAlso.Any(f => TopicFilter.Covers(f, topic));

    /// <summary>Topics to subscribe to at an outside broker: all of the site, each foreign topic, and what else was asked for.</summary>
    /// <remarks>No filter that another covers: a broker may send a copy for each subscription that matches.</remarks>
    public IEnumerable<string> Subscriptions()
    {
        var all = listenAlso.Append(root + "#").Concat(byTopic.Keys.Concat(buttons.Keys).Where(t => !IsOwn(t))).Distinct(StringComparer.Ordinal).ToList();
        return all.Where(f => !all.Any(other => other != f && TopicFilter.Covers(other, f)));
    }
}
