using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>The history with the hours a replay has computed in the place of those that are kept: what figures would be if they were written.</summary>
sealed class RecomputedHours(IReadingHistory kept, IReadOnlyList<ChangedHour> changed) : IReadingHistory
{
    readonly ILookup<string, HourRow> rows = changed.Where(c => c.Row is not null).ToLookup(c => c.Series.Channel, c => c.Row!);

    public IReadOnlyList<HourRow> Hours(ChannelPlan channel, Instant from, Instant to)
    {
        var hours = kept.Hours(channel, from, to);
        var own = rows[channel.Id].Where(r => r.Hour >= from && r.Hour < to).ToDictionary(r => r.Hour);
        return own.Count == 0 ? hours : [.. hours.Where(h => !own.ContainsKey(h.Hour)).Concat(own.Values).Where(h => !h.IsEmpty).OrderBy(h => h.Hour)];
    }

    public IReadOnlyList<Sample> Raw(ChannelPlan channel, Instant from, Instant to, int most) => kept.Raw(channel, from, to, most);

    public IReadOnlyList<MinuteRow> Minutes(ChannelPlan channel, Instant from, Instant to) => kept.Minutes(channel, from, to);

    public IReadOnlyList<Sample> WithNeighbours(ChannelPlan channel, Instant from, Instant to) => kept.WithNeighbours(channel, from, to);

    public HourRow Part(ChannelPlan channel, Instant from, Instant to) => kept.Part(channel, from, to);
}
