using System.Collections.Concurrent;
using System.Threading.Channels;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>Stands for the store: keeps what it is given, fails or holds back as told.</summary>
sealed class FakeIntake : IIntake
{
    readonly Channel<IncomingMessage> arrivals = Channel.CreateUnbounded<IncomingMessage>();
    readonly ConcurrentQueue<IncomingMessage> accepted = new();
    int failures;
    volatile TaskCompletionSource? gate;

    /// <summary>What was stored, in order.</summary>
    public IReadOnlyList<IncomingMessage> Accepted => [.. accepted];

    /// <summary>The next calls throw as a store does that cannot commit.</summary>
    public void FailNext(int calls) => Interlocked.Exchange(ref failures, calls);

    /// <summary>Calls wait from now on until <see cref="Release"/>.</summary>
    public void Hold() => gate = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Release()
    {
        gate?.TrySetResult();
        gate = null;
    }

    /// <summary>The next message handed in, whether stored or not.</summary>
    public Task<IncomingMessage> Next() => Patience.For(arrivals.Reader.ReadAsync(Xunit.TestContext.Current.CancellationToken).AsTask());

    public async Task Accept(IncomingMessage message, CancellationToken stop)
    {
        // Decided in the order of the calls, not in that in which held calls wake up.
        var fails = Interlocked.Decrement(ref failures) >= 0;
        arrivals.Writer.TryWrite(message);
        if (gate is { } held) await held.Task.WaitAsync(stop);
        if (fails) throw new IOException("disk full");
        accepted.Enqueue(message);
    }
}
