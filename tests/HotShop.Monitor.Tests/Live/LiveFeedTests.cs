using HotShop.Monitor.Live;
using Xunit;

namespace HotShop.Monitor.Tests.Live;

public class LiveFeedTests
{
    [Fact]
    public async Task A_page_that_does_not_keep_up_loses_the_oldest_and_holds_up_nobody()
    {
        var feed = new LiveFeed();
        using var open = new CancellationTokenSource();
        var page = feed.Subscribe(open.Token);
        for (var i = 0; i < 5_000; i++) feed.Publish(new LiveEvent("reading", "furnace-1/crown", i));
        var seen = new List<int>();
        while (page.TryRead(out var change)) seen.Add((int)change.Content);
        Assert.Equal(Enumerable.Range(3_000, 2_000), seen);
        await open.CancelAsync();
        feed.Publish(new LiveEvent("reading", "furnace-1/crown", 1));
        Assert.Equal(0, feed.Open);
        Assert.False(await page.WaitToReadAsync(TestContext.Current.CancellationToken));
    }
}
