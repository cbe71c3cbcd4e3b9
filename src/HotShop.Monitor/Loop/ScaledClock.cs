namespace HotShop.Monitor.Loop;

/// <summary>A clock that runs faster than the wall's, for demos: the domain lives in its time; network time-outs keep the real clock.</summary>
public sealed class ScaledClock : TimeProvider
{
    readonly TimeProvider real;
    readonly double speed;
    readonly DateTimeOffset start;
    long? startStamp;

    /// <param name="speed">Seconds of this clock per real second, above 0.</param>
    /// <param name="start">What this clock shows until <see cref="Begin"/>: a fast clock would run hours ahead while a program starts up.</param>
    public ScaledClock(TimeProvider real, double speed, DateTimeOffset start)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        (this.real, this.speed, this.start) = (real, speed, start);
    }

    /// <summary>The clock begins to run.</summary>
    public void Begin() => startStamp ??= real.GetTimestamp();

    public double Speed => speed;

    public override DateTimeOffset GetUtcNow() => start + Elapsed;

    public override long GetTimestamp() => Elapsed.Ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override TimeZoneInfo LocalTimeZone => real.LocalTimeZone;

    TimeSpan Elapsed => startStamp is { } began ? real.GetElapsedTime(began) * speed : TimeSpan.Zero;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        real.CreateTimer(callback, state, Real(dueTime), Real(period));

    TimeSpan Real(TimeSpan scaled) => scaled <= TimeSpan.Zero ? scaled : TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMillisecond, (long)(scaled.Ticks / speed)));
}
