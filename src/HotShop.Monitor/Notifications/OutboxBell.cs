using System.Threading.Channels;

namespace HotShop.Monitor.Notifications;

/// <summary>Rings when messages were committed, so that the sender looks at once instead of now and then.</summary>
public sealed class OutboxBell
{
    readonly List<Channel<bool>> listeners = [];

    public void Ring()
    {
        lock (listeners)
            foreach (var listener in listeners) listener.Writer.TryWrite(true);
    }

    /// <summary>A ring while nobody waits is kept: one, however many there were.</summary>
    public ChannelReader<bool> Listen()
    {
        var channel = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        lock (listeners) listeners.Add(channel);
        return channel.Reader;
    }
}
