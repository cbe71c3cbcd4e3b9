using NodaTime;

namespace HotShop.Evaluation;

/// <summary>A clock that stands still until it is set: thirty days pass as fast as they can be computed.</summary>
sealed class HandClock(Instant start) : TimeProvider
{
    readonly Instant start = start;
    long elapsedTicks;

    public Instant Now
    {
        get => start + Duration.FromTicks(Volatile.Read(ref elapsedTicks));
        set => Volatile.Write(ref elapsedTicks, (value - start).BclCompatibleTicks);
    }

    public override DateTimeOffset GetUtcNow() => Now.ToDateTimeOffset();

    public override long GetTimestamp() => Volatile.Read(ref elapsedTicks);

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <summary>Nothing here waits: whoever has a deadline is asked at each tick.</summary>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        throw new NotSupportedException("the evaluation drives the service by its ticks");
}
