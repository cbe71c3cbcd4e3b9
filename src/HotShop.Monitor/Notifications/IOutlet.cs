namespace HotShop.Monitor.Notifications;

/// <summary>A message ready to leave.</summary>
/// <param name="Key">The same for every attempt, so that a receiver can drop a second copy.</param>
/// <param name="Link">Address of the page with the button. Holds a token: never logged.</param>
sealed record OutgoingMessage(string Key, MessageKind Kind, string Occurrence, int Step, int Priority, string Title, string Text, Uri Link);

/// <summary>What came of one attempt to send.</summary>
abstract record SendResult
{
    /// <param name="Proof">What the receiver answered. It took the message; nobody need have read it.</param>
    public sealed record Accepted(string Proof) : SendResult;

    /// <param name="HasAnswered">False when nothing answered at all: other messages will fare no better now.</param>
    public sealed record TryAgain(string Why, bool HasAnswered) : SendResult;

    /// <summary>Trying the same message again cannot help: somebody must look.</summary>
    public sealed record Refused(string Why) : SendResult;
}

/// <summary>One way out. Failing is a result, never an exception; only cancellation passes through.</summary>
interface IOutlet
{
    Task<SendResult> Send(OutletAddress to, OutgoingMessage message, CancellationToken stop);
}
