using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>Notices a clock that stepped, or that is behind what is already stored: times would then lie.</summary>
sealed class ClockWatch : ITickStage
{
    /// <summary>Thirty turns of the loop: half a minute, or as much real time as would matter in a fast demo.</summary>
    readonly Duration step;
    static readonly Duration ShownFor = Duration.FromHours(1);

    readonly HealthBoard health;
    readonly TimeProvider clock;
    readonly Instant? newestStored;
    (Instant Utc, long Stamp)? last;
    (Instant Until, string Text)? stepped;

    public ClockWatch(IStoreReader store, HealthBoard health, TimeProvider clock, LoopPace pace)
    {
        (this.health, this.clock, step) = (health, clock, Duration.FromTimeSpan(pace.Period * 30));
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        // The hourly move takes the times of arrival away: those of the readings themselves and of the log say nearly the same.
        command.CommandText = """
            SELECT max(at) FROM (SELECT max(arrived) AS at FROM arrival UNION ALL SELECT max(arrived) FROM log_entry
            UNION ALL SELECT (SELECT max(at) FROM reading WHERE series = id) FROM series)
            """;
        newestStored = command.ExecuteScalar() is long newest ? Columns.FromMicroseconds(newest) : null;
    }

    public void Tick(WriteScope scope)
    {
        var now = clock.GetUtcNow().ToInstant();
        var stamp = clock.GetTimestamp();
        if (last is { } before)
        {
            var off = now - before.Utc - Duration.FromTimeSpan(clock.GetElapsedTime(before.Stamp, stamp));
            if (off > step || off < -step)
                stepped = (now + ShownFor, $"the clock stepped by {off.TotalSeconds:0} s at {now}; readings without a time of their own around it are off by that much. Check the network time");
        }
        last = (now, stamp);
        if (newestStored is { } newest && now < newest - step)
            health.Report(HealthBoard.Clock, false, $"the clock shows {now}, but readings up to {newest} are stored; set the clock, or wait for network time", now);
        else if (stepped is { } jump && now < jump.Until) health.Report(HealthBoard.Clock, false, jump.Text, now);
        else health.Report(HealthBoard.Clock, true, "running evenly", now);
    }
}
