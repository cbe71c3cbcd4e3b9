namespace HotShop.Monitor.Loop;

/// <summary>A clock that runs faster than the wall's, for demos: the domain lives in its time; network time-outs keep the real clock.</summary>
public sealed class ScaledClock : TimeProvider
{
    readonly TimeProvider real;
    readonly double speed;
    readonly DateTimeOffset start;
    readonly Lock gate = new();
    TimeSpan counted;
    long? countedAt;
    TimeSpan latest = TimeSpan.MaxValue;

    /// <param name="speed">Seconds of this clock per real second, above 0.</param>
    /// <param name="start">What this clock shows until <see cref="Begin"/>: a fast clock would run hours ahead while a program starts up.</param>
    public ScaledClock(TimeProvider real, double speed, DateTimeOffset start)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        (this.real, this.speed, this.start) = (real, speed, start);
    }

    /// <summary>The clock begins to run.</summary>
    public void Begin()
    {
        lock (gate) countedAt ??= real.GetTimestamp();
    }

    /// <summary>
    /// The clock waits at this time until it is told a later one. Never goes back, and never jumps to make up for a wait: where a machine is too slow
    /// for the speed asked for, the studio's day takes longer, instead of going on without its sensors.
    /// </summary>
    public void WaitAt(DateTimeOffset time)
    {
        lock (gate)
        {
            counted = Counted;
            if (countedAt is not null) countedAt = real.GetTimestamp();
            latest = time - start > counted ? time - start : counted;
        }
    }

    public double Speed => speed;

    public override DateTimeOffset GetUtcNow() => start + Elapsed;

    public override long GetTimestamp() => Elapsed.Ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override TimeZoneInfo LocalTimeZone => real.LocalTimeZone;

    TimeSpan Elapsed
    {
        get { lock (gate) return Counted; }
    }

    TimeSpan Counted
    {
        get
        {
            if (countedAt is not { } at) return counted;
            var now = counted + real.GetElapsedTime(at) * speed;
            return now < latest ? now : latest;
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        real.CreateTimer(callback, state, Real(dueTime), Real(period));

    TimeSpan Real(TimeSpan scaled) => scaled <= TimeSpan.Zero ? scaled : TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMillisecond, (long)(scaled.Ticks / speed)));
}
