namespace HotShop.Monitor.Wire;

/// <summary>Finds the channel a topic belongs to; built once from the configuration in force.</summary>
public sealed class ChannelDirectory
{
    readonly Dictionary<string, List<ChannelPlan>> byTopic = [];
    readonly Dictionary<string, ChannelPlan> byId = [];
    readonly Dictionary<string, ButtonPlan> buttons;

    /// <param name="prefix">First level of the topics, usually <c>hotshop</c>.</param>
    /// <param name="site">Second level: the site's id.</param>
    public ChannelDirectory(string prefix, string site, IEnumerable<string> appliances, IEnumerable<ChannelPlan> channels, IEnumerable<ButtonPlan>? buttons = null)
    {
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

    /// <summary>Topics to subscribe to at an outside broker: all of the site, and each foreign topic.</summary>
    public IEnumerable<string> Subscriptions()
    {
        var root = $"{Prefix}/{Site}/";
        yield return root + "#";
        foreach (var topic in byTopic.Keys.Concat(buttons.Keys).Where(t => !t.StartsWith(root, StringComparison.Ordinal))) yield return topic;
    }
}
