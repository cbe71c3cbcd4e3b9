namespace HotShop.Monitor.Loop;

/// <summary>A clock that runs faster than the wall's, for demos: the domain lives in its time; network time-outs keep the real clock.</summary>
public sealed class ScaledClock : TimeProvider
{
    readonly TimeProvider real;
    readonly double speed;
    readonly DateTimeOffset start;
    readonly long startStamp;

    /// <param name="speed">Seconds of this clock per real second, above 0.</param>
    /// <param name="start">What this clock shows now.</param>
    public ScaledClock(TimeProvider real, double speed, DateTimeOffset start)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        (this.real, this.speed, this.start, startStamp) = (real, speed, start, real.GetTimestamp());
    }

    public double Speed => speed;

    public override DateTimeOffset GetUtcNow() => start + Elapsed;

    public override long GetTimestamp() => Elapsed.Ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override TimeZoneInfo LocalTimeZone => real.LocalTimeZone;

    TimeSpan Elapsed => real.GetElapsedTime(startStamp) * speed;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        real.CreateTimer(callback, state, Real(dueTime), Real(period));

    TimeSpan Real(TimeSpan scaled) => scaled <= TimeSpan.Zero ? scaled : TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMillisecond, (long)(scaled.Ticks / speed)));
}
