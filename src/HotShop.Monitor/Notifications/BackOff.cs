namespace HotShop.Monitor.Notifications;

/// <summary>How long to wait before trying again.</summary>
static class BackOff
{
    public static readonly TimeSpan First = TimeSpan.FromSeconds(1), Longest = TimeSpan.FromMinutes(1);

    /// <summary>1, 2, 4 ... 60 s, each shortened by up to half, so that several senders do not knock together.</summary>
    /// <param name="failures">Attempts that failed in a row, from 1.</param>
    /// <param name="jitter">0 to 1: 0 waits half, 1 the whole.</param>
    public static TimeSpan After(int failures, double jitter)
    {
        var whole = Math.Min(First.TotalSeconds * Math.Pow(2, Math.Min(failures, 30) - 1), Longest.TotalSeconds);
        return TimeSpan.FromSeconds(whole * (0.5 + 0.5 * Math.Clamp(jitter, 0, 1)));
    }
}
