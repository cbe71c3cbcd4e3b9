using System.Collections.Concurrent;
using System.Threading.Channels;

namespace HotShop.Monitor.Live;

/// <summary>Something that changed, for pages that are open. Only committed things get here.</summary>
/// <param name="Kind">reading, derived, alarm, log or mode.</param>
/// <param name="Key">What changed: a newer event of the same kind and key replaces an older one that waits.</param>
public sealed record LiveEvent(string Kind, string Key, object Content);

/// <summary>Hands changes to the open pages. A page that does not keep up loses the oldest, never the newest; nobody waits for it.</summary>
public sealed class LiveFeed
{
    const int MostWaiting = 2000;
    readonly ConcurrentDictionary<Channel<LiveEvent>, bool> open = new();

    public int Open => open.Count;

    public void Publish(LiveEvent change)
    {
        foreach (var page in open.Keys) page.Writer.TryWrite(change);
    }

    /// <summary>The changes from now on; ends with the token.</summary>
    public ChannelReader<LiveEvent> Subscribe(CancellationToken until)
    {
        var page = Channel.CreateBounded<LiveEvent>(new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
        open[page] = true;
        until.Register(() =>
        {
            open.TryRemove(page, out _);
            page.Writer.TryComplete();
        });
        return page.Reader;
    }
}
