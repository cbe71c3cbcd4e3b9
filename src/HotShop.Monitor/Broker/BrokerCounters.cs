using System.Diagnostics.Metrics;
using NodaTime;

namespace HotShop.Monitor.Broker;

/// <summary>Something the broker turned away, for the health page: a 3.1.1 device is told nothing, so a person must see it here.</summary>
/// <param name="Times">How often since the service started.</param>
public sealed record Denial(string Kind, string Client, string? User, string About, string Reason, Instant LastAt, long Times);

/// <summary>Counts since the service started.</summary>
/// <param name="Redelivered">Of the received: sent again by the other side because it had seen no acknowledgement.</param>
/// <param name="Retained">Of the received: with the RETAIN flag, so never fresh.</param>
/// <param name="NotAccepted">The store could not take them; not acknowledged, so that they come again.</param>
/// <param name="Dropped">Gone: QoS 0 messages the store could not take, and messages to subscribers that did not keep up.</param>
public sealed record BrokerSnapshot(
    long Received, long Redelivered, long Retained, long NotAccepted, long RefusedConnections, long DeniedPublishes, long DeniedSubscriptions, long Dropped,
    long Connections, IReadOnlyList<Denial> Denials);

/// <summary>What passes the broker, and what does not. One per process; safe from many threads.</summary>
public sealed class BrokerCounters : IDisposable
{
    public const string MeterName = "HotShop.Broker";

    /// <summary>More different denials than this are an attack or a broken fleet: the oldest goes.</summary>
    const int DenialsKept = 100;

    const int LongestKept = 120;

    readonly Meter meter = new(MeterName);
    readonly Dictionary<(string, string, string), Denial> denials = [];
    readonly Lock gate = new();
    readonly Tally received, redelivered, retained, notAccepted, refusedConnections, deniedPublishes, deniedSubscriptions, dropped, connections;

    public BrokerCounters()
    {
        received = new(meter, "hotshop.broker.received", "Messages taken in");
        redelivered = new(meter, "hotshop.broker.redelivered", "Messages that came again after a missing acknowledgement");
        retained = new(meter, "hotshop.broker.retained", "Messages with the RETAIN flag");
        notAccepted = new(meter, "hotshop.broker.not_accepted", "Messages the store could not take");
        refusedConnections = new(meter, "hotshop.broker.refused_connections", "Connections refused");
        deniedPublishes = new(meter, "hotshop.broker.denied_publishes", "Publishes against the access rules");
        deniedSubscriptions = new(meter, "hotshop.broker.denied_subscriptions", "Subscriptions against the access rules");
        dropped = new(meter, "hotshop.broker.dropped", "Messages lost");
        connections = new(meter, "hotshop.broker.connections", "Connections made");
    }

    public BrokerSnapshot Snapshot()
    {
        lock (gate)
            return new(received.Value, redelivered.Value, retained.Value, notAccepted.Value, refusedConnections.Value, deniedPublishes.Value, deniedSubscriptions.Value,
                dropped.Value, connections.Value, [.. denials.Values.OrderByDescending(d => d.LastAt)]);
    }

    internal void Received(bool isRedelivered, bool isRetained)
    {
        received.Add();
        if (isRedelivered) redelivered.Add();
        if (isRetained) retained.Add();
    }

    internal void NotAccepted(bool isLost)
    {
        notAccepted.Add();
        if (isLost) dropped.Add();
    }

    internal void Dropped() => dropped.Add();

    internal void ConnectionMade() => connections.Add();

    internal void ConnectionRefused(string client, string? user, string reason, Instant now) => Deny(refusedConnections, new("connection", client, user, "", reason, now, 1));

    internal void PublishDenied(string client, string? user, string topic, string reason, Instant now) => Deny(deniedPublishes, new("publish", client, user, topic, reason, now, 1));

    internal void SubscriptionDenied(string client, string? user, string filter, string reason, Instant now) => Deny(deniedSubscriptions, new("subscription", client, user, filter, reason, now, 1));

    /// <summary>Nothing was turned away, but the device should be changed.</summary>
    internal void Advise(string client, string? user, string topic, string reason, Instant now) => Deny(null, new("advice", client, user, topic, reason, now, 1));

    void Deny(Tally? tally, Denial denial)
    {
        tally?.Add();
        lock (gate)
        {
            denial = denial with { Client = Cut(denial.Client), User = denial.User is { } user ? Cut(user) : null, About = Cut(denial.About) };
            var key = (denial.Kind, denial.Client, denial.About);
            if (!denials.TryGetValue(key, out var before) && denials.Count >= DenialsKept) denials.Remove(denials.MinBy(d => d.Value.LastAt).Key);
            denials[key] = denial with { Times = (before?.Times ?? 0) + 1 };
        }
    }

    /// <summary>A stranger's client id may be 64 kB of anything.</summary>
    static string Cut(string text) => text.Length <= LongestKept ? text : text[..LongestKept] + "…";

    public void Dispose() => meter.Dispose();

    sealed class Tally(Meter meter, string name, string description)
    {
        readonly Counter<long> counter = meter.CreateCounter<long>(name, description: description);
        long value;

        public long Value => Interlocked.Read(ref value);

        public void Add()
        {
            Interlocked.Increment(ref value);
            counter.Add(1);
        }
    }
}
