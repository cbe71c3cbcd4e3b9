using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>A message as the broker handed it over.</summary>
/// <param name="Topic">Full topic, e.g. <c>hotshop/quillmere/furnace-1/crown</c>.</param>
/// <param name="Payload">The bytes as sent; never changed afterwards.</param>
/// <param name="Retained">The broker kept this as a last value: it is old and never a fresh reading.</param>
/// <param name="Redelivered">The DUP flag: sent again because the first delivery was not acknowledged.</param>
/// <param name="ArrivedAt">When it reached this program, by the service's clock.</param>
/// <param name="Sender">Client id or user of the publisher where the broker knows it; for the refused list and the health page.</param>
public sealed record IncomingMessage(string Topic, byte[] Payload, bool Retained, bool Redelivered, Instant ArrivedAt, string? Sender)
{
    /// <summary>The sender's number of a message that wants an acknowledgement; the repetition carries the same. Null without one.</summary>
    public ushort? PacketNumber { get; init; }
}

/// <summary>Where brokers hand messages in.</summary>
public interface IIntake
{
    /// <summary>
    /// Returns once everything the message says is durably stored (or durably refused with a reason): only then may the broker acknowledge.
    /// Throws when the store could not commit: the message must then not be acknowledged, so that it is sent again.
    /// </summary>
    Task Accept(IncomingMessage message, CancellationToken stop);
}
