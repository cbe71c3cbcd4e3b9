namespace HotShop.Monitor.Tests.Broker;

/// <summary>The one generous limit of tests that wait for something real.</summary>
static class Patience
{
    public static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);

    public static Task<T> For<T>(Task<T> task) => task.WaitAsync(Limit, Xunit.TestContext.Current.CancellationToken);

    public static Task For(Task task) => task.WaitAsync(Limit, Xunit.TestContext.Current.CancellationToken);

    /// <summary>Waits for a state that announces itself nowhere; asks often, and fails at the limit.</summary>
    public static Task Until(Func<bool> isSo, string what) => Until(isSo, () => what);

    public static async Task Until(Func<bool> isSo, Func<string> what)
    {
        var clock = new RealClock();
        var since = clock.GetTimestamp();
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(20), clock);
        while (!isSo())
        {
            Xunit.Assert.True(clock.GetElapsedTime(since) < Limit, $"not within {Limit.TotalSeconds} s: {what()}");
            await tick.WaitForNextTickAsync(Xunit.TestContext.Current.CancellationToken);
        }
    }
}

/// <summary>The machine's clock, for tests on real sockets.</summary>
sealed class RealClock : TimeProvider;
