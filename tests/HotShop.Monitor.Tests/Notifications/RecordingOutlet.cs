using System.Collections.Concurrent;
using HotShop.Monitor.Notifications;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>Takes messages and remembers them, or answers as it is told.</summary>
sealed class RecordingOutlet : IOutlet
{
    readonly ConcurrentQueue<(string Person, OutgoingMessage Message)> taken = new();

    public Func<OutgoingMessage, SendResult> Answer { get; set; } = _ => new SendResult.Accepted("taken");

    public IReadOnlyList<(string Person, OutgoingMessage Message)> Taken => [.. taken];

    public Task<SendResult> Send(OutletAddress to, OutgoingMessage message, CancellationToken stop)
    {
        var answer = Answer(message);
        if (answer is SendResult.Accepted) taken.Enqueue((to.Person.Id, message));
        return Task.FromResult(answer);
    }
}
