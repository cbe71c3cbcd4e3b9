using NodaTime;

namespace HotShop.Monitor.Broker;

/// <summary>
/// How long to wait before the next attempt: 1 s, doubling to 60 s, less up to a half by chance so that a roomful of clients does not return in step.
/// Starts again at 1 s only after a connection that lasted 60 s: a broker that accepts and drops at once must not be hammered.
/// </summary>
/// <param name="chance">0 to below 1.</param>
sealed class ReconnectDelay(Func<double> chance)
{
    public static readonly Duration Stable = Duration.FromSeconds(60);
    public static readonly Duration Longest = Duration.FromSeconds(60);

    Duration next = Duration.FromSeconds(1);

    public Duration AfterFailure()
    {
        var current = next;
        next = Duration.Min(next * 2, Longest);
        return current * (1 - chance() / 2);
    }

    public Duration AfterConnection(Duration lasted)
    {
        if (lasted >= Stable) next = Duration.FromSeconds(1);
        return AfterFailure();
    }
}
