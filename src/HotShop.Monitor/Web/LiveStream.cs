using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Live;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using NodaTime;

namespace HotShop.Monitor.Web;

/// <summary>Live values for open pages: server-sent events, at most four updates a second, the newest of each thing only.</summary>
sealed class LiveStream(LiveFeed feed, StudioPlan plan, IHostApplicationLifetime lifetime, TimeProvider realClock)
{
    static readonly TimeSpan Pace = TimeSpan.FromMilliseconds(250), Heartbeat = TimeSpan.FromSeconds(15);

    public async IAsyncEnumerable<SseItem<object>> Run([EnumeratorCancellation] CancellationToken closed)
    {
        // An open page must not hold up a shutdown.
        using var until = CancellationTokenSource.CreateLinkedTokenSource(closed, lifetime.ApplicationStopping);
        var changes = feed.Subscribe(until.Token);
        var newest = new Dictionary<(string, string), LiveEvent>();
        using var timer = new PeriodicTimer(Pace, realClock);
        var quiet = TimeSpan.Zero;
        try
        {
            yield return new SseItem<object>(new { site = plan.Site }, "hello");
            while (await Next(timer, until.Token))
            {
                newest.Clear();
                while (changes.TryRead(out var change)) newest[(change.Kind, change.Key)] = change;
                quiet = newest.Count > 0 ? TimeSpan.Zero : quiet + Pace;
                foreach (var kind in newest.Values.GroupBy(c => c.Kind)) yield return new SseItem<object>(kind.Select(c => Answer(c.Content)).ToArray(), kind.Key);
                if (quiet < Heartbeat) continue;
                quiet = TimeSpan.Zero;
                yield return new SseItem<object>(new { }, "heartbeat");
            }
        }
        finally
        {
            // Also when the tab is torn away in the middle of an answer: what it subscribed to must not stay.
            await until.CancelAsync();
        }
    }

    /// <summary>A closed tab is no error: the wait ends quietly.</summary>
    static async Task<bool> Next(PeriodicTimer timer, CancellationToken until)
    {
        try
        {
            return await timer.WaitForNextTickAsync(until);
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    object Answer(object content) => content switch
    {
        StoredReading reading => new LiveReading($"{plan.Site}/{reading.Channel.Id}", reading.Channel.Appliance, reading.Channel.Name, reading.Value, reading.Unit, reading.At,
            reading.IsPlausible ? reading.IsLive ? "good" : "late" : "implausible"),
        LogEntry entry => LogbookEndpoints.Answer(entry, plan.Site),
        _ => content,
    };

    sealed record LiveReading(string Id, string Appliance, string Channel, double Value, string Unit, Instant At, string Quality);
}
