using System.Security.Cryptography;

namespace HotShop.Monitor.Broker;

/// <summary>
/// Notices a connection that stands and delivers nothing: what the service publishes on its own topic must come back through the site's subscription.
/// Other messages count as signs of life too, so a long queue before the probe is no fault.
/// </summary>
sealed class LoopbackProbe(string topic)
{
    readonly Lock gate = new();
    byte[] expected = [];
    TaskCompletionSource? returned;
    long progress;

    public string Topic => topic;

    /// <summary>Messages received and stored so far: while it grows, the connection lives.</summary>
    public long ProgressSoFar => Interlocked.Read(ref progress);

    /// <returns>The payload to publish, and the task that ends when it is back.</returns>
    public (byte[] Payload, Task Returned) Next()
    {
        lock (gate)
        {
            expected = System.Text.Encoding.ASCII.GetBytes(RandomNumberGenerator.GetHexString(16, lowercase: true));
            returned = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            return (expected, returned.Task);
        }
    }

    public void Progress() => Interlocked.Increment(ref progress);

    public void Seen(string onTopic, byte[] payload)
    {
        if (onTopic != topic) return;
        lock (gate)
            if (payload.AsSpan().SequenceEqual(expected)) returned?.TrySetResult();
    }
}
