namespace HotShop.Monitor.Broker;

/// <summary>The way out to MQTT, the same for the embedded and an outside broker.</summary>
public interface IBrokerLink
{
    /// <summary>True while messages can be sent and come in.</summary>
    bool IsConnected { get; }

    /// <summary>Raised after every connection: what was published retained must be published again, because the broker may have forgotten it.</summary>
    event Action? Connected;

    /// <summary>Publishes with QoS 1; completes when the broker has it.</summary>
    /// <param name="payload">Empty with <paramref name="retain"/>: takes the retained message away.</param>
    /// <exception cref="BrokerLinkException">There is no connection, or the broker refuses the message.</exception>
    Task Publish(string topic, byte[] payload, bool retain, CancellationToken stop);
}

/// <summary>A message did not reach the broker. Trying again after the next connection can help unless <see cref="IsRefused"/>.</summary>
public sealed class BrokerLinkException(string message, bool isRefused = false, Exception? inner = null) : Exception(message, inner)
{
    public bool IsRefused { get; } = isRefused;
}
