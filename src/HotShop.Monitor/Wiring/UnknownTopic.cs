using NodaTime;

namespace HotShop.Monitor.Wiring;

/// <summary>A topic on which something came that no channel has asked for, or not for all of it.</summary>
/// <param name="Payload">The last one; null where it was too long to keep.</param>
/// <param name="PayloadBytes">Length of the last one as it came.</param>
/// <param name="Sender">Client or user who sent the last one, where the broker knows.</param>
/// <param name="IsLastValue">The last one was a last value that the broker kept (retained): it may be old.</param>
/// <param name="Arrivals">The last few, in order of time, without last values.</param>
sealed record UnknownTopic(
    string Topic, long Count, Instant Since, Instant LastAt, byte[]? Payload, int PayloadBytes, string? Sender, bool IsLastValue, IReadOnlyList<Instant> Arrivals)
{
    /// <summary>Why the broker turned it away, where it did; it was not taken, and the sender has to be allowed first.</summary>
    public string? TurnedAway { get; init; }
}
