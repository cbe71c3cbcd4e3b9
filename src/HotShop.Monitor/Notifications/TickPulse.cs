namespace HotShop.Monitor.Notifications;

/// <summary>When the service's loop last got through a transaction, by the wall clock: a loop that hangs reports nothing, so its silence must be seen.</summary>
sealed class TickPulse(TimeProvider wallClock)
{
    long last = wallClock.GetTimestamp();

    public void Beat() => Volatile.Write(ref last, wallClock.GetTimestamp());

    public TimeSpan Age => wallClock.GetElapsedTime(Volatile.Read(ref last));
}
