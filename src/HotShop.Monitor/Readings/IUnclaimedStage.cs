using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Readings;

/// <summary>Hears of messages that no channel, or not every value of which a channel, has asked for.</summary>
interface IUnclaimedStage
{
    /// <summary>Never throws, and keeps what it remembers within bounds.</summary>
    /// <returns>True where that was all: the message is none of this site's own and needs no place on the refused list.</returns>
    bool Notice(IncomingMessage message, ChannelDirectory channels);
}
