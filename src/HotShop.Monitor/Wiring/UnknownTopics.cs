using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Wiring;

/// <summary>
/// Remembers topics that no channel listens to, so that a person can say what they are: the last 200 heard, in memory alone, the longest silent gone first.
/// What lies under the site's own topics is a mistake somebody must hear of, and goes on the refused list as well.
/// </summary>
sealed class UnknownTopics : IUnclaimedStage
{
    public const int Most = 200, LongestTopic = 300, LargestPayload = 8192, MostArrivals = 12;

    readonly Lock gate = new();
    readonly Dictionary<string, UnknownTopic> known = new(StringComparer.Ordinal);

    /// <summary>The last heard first.</summary>
    public IReadOnlyList<UnknownTopic> All
    {
        get { lock (gate) return [.. known.Values.OrderByDescending(t => t.LastAt)]; }
    }

    public UnknownTopic? Find(string topic)
    {
        lock (gate) return known.GetValueOrDefault(topic);
    }

    public bool Notice(IncomingMessage message, ChannelDirectory channels)
    {
        var isNew = Remember(message, null);
        // Where a channel listens, the message goes on its usual way. A stray of a foreign device is told once; one that only the wider subscription brings is nobody's mistake.
        return channels.ForTopic(message.Topic).Count == 0 && !channels.IsOwn(message.Topic) && (!isNew || channels.IsOnlyListenedTo(message.Topic));
    }

    /// <summary>What the broker turned away on a topic that nobody listens to: seen here, a person can allow it.</summary>
    public void TurnedAway(IncomingMessage message, string reason) => Remember(message, reason);

    /// <returns>False where the topic is remembered already.</returns>
    bool Remember(IncomingMessage message, string? turnedAway)
    {
        if (message.Topic.Length > LongestTopic) return true;
        lock (gate)
        {
            var before = known.GetValueOrDefault(message.Topic);
            if (before is null && known.Count >= Most) known.Remove(known.MinBy(t => t.Value.LastAt).Key);
            IReadOnlyList<NodaTime.Instant> arrivals = message.Retained ? before?.Arrivals ?? [] : [.. (before?.Arrivals ?? []).TakeLast(MostArrivals - 1), message.ArrivedAt];
            known[message.Topic] = new(message.Topic, (before?.Count ?? 0) + 1, before?.Since ?? message.ArrivedAt, message.ArrivedAt,
                message.Payload.Length <= LargestPayload ? message.Payload : null, message.Payload.Length, message.Sender, message.Retained, arrivals) { TurnedAway = turnedAway };
            return before is null;
        }
    }
}
