using NodaTime;

namespace HotShop.Simulator.Broker;

/// <summary>
/// The studio's time: starts where it is told and runs a number of times as fast as the clock on the wall. Timers and time-outs stay
/// on the wall's.
/// </summary>
public sealed class ScaledClock(TimeProvider wall, Instant start, double speed) : TimeProvider
{
    readonly long startStamp = wall.GetTimestamp();

    public override DateTimeOffset GetUtcNow() => start.ToDateTimeOffset() + wall.GetElapsedTime(startStamp) * speed;

    public override long GetTimestamp() => wall.GetTimestamp();

    public override long TimestampFrequency => wall.TimestampFrequency;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => wall.CreateTimer(callback, state, dueTime, period);
}
