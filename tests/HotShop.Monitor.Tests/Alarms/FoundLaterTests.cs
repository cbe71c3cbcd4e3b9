using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Late;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>A device that kept its readings through the night and sends them in the morning.</summary>
public sealed class FoundLaterTests : IAsyncDisposable
{
    static readonly Instant TwoAtNight = OpenStudio.Start - Hours(7), Six = OpenStudio.Start - Hours(3);

    readonly OpenStudio studio = OpenStudio.Open(now: Six, more: services => services.AddAnnealing().AddAlarms());

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    async Task Backlog(string channel, params IEnumerable<(Instant At, double Value)> readings)
    {
        foreach (var (at, value) in readings) await studio.Send(channel, OpenStudio.Timed(value, at), arrived: Six);
    }

    IReadOnlyList<(LateStretch Stretch, AlarmDefinition? Alarm)> Found => studio.The<FoundLater>().Between(TwoAtNight - Hours(3), Six);

    [Fact]
    public async Task A_limit_broken_at_two_that_is_heard_of_at_six_rings_nobody_and_is_found_later()
    {
        await Backlog("furnace-1/crown", Steady(1150, Seconds(10), TwoAtNight - Minutes(10), TwoAtNight).Concat(Steady(1302, Seconds(10), TwoAtNight + Seconds(10), TwoAtNight + Minutes(5))));
        Assert.Empty(studio.The<IAlarmDesk>().Current);
        Assert.Empty(studio.The<IAlarmDesk>().History(TwoAtNight - Hours(3), Six));

        var (broken, alarm) = Assert.Single(Found, f => f.Alarm is not null);
        Assert.Equal(("furnace-1.overheat.crown", TwoAtNight + Seconds(10), TwoAtNight + Minutes(5), 1302.0, Six), (alarm!.Id, broken.From, broken.Until, broken.Highest, broken.ArrivedAt));
        var (whole, _) = Assert.Single(Found, f => f.Alarm is null);
        Assert.Equal((TwoAtNight - Minutes(10), TwoAtNight + Minutes(5), 1150.0, 1302.0), (whole.From, whole.Until, whole.Lowest, whole.Highest));
    }

    [Fact]
    public async Task A_backlog_sent_newest_first_is_one_stretch_all_the_same()
    {
        await Backlog("furnace-1/crown", Steady(1302, Seconds(10), TwoAtNight, TwoAtNight + Minutes(5)).Reverse());
        Assert.Equal((TwoAtNight, TwoAtNight + Minutes(5), 31), Found.Where(f => f.Alarm is not null).Select(f => (f.Stretch.From, f.Stretch.Until, f.Stretch.Count)).Single());
    }

    [Fact]
    public async Task A_limit_broken_for_less_than_its_delay_would_not_have_rung_and_is_not_told_as_if()
    {
        await Backlog("furnace-1/crown", Steady(1302, Seconds(10), TwoAtNight, TwoAtNight + Seconds(50)));   // the delay is 60 s
        Assert.DoesNotContain(Found, f => f.Alarm is not null);
    }

    [Fact]
    public async Task Two_stretches_far_apart_are_told_apart()
    {
        await Backlog("furnace-1/crown", Steady(1302, Seconds(10), TwoAtNight, TwoAtNight + Minutes(2)));
        await Backlog("furnace-1/crown", Steady(1310, Seconds(10), TwoAtNight + Hours(1), TwoAtNight + Hours(1) + Minutes(2)));
        Assert.Equal([1302, 1310], Found.Where(f => f.Alarm is not null).Select(f => f.Stretch.Highest));
    }

    [Fact]
    public async Task Mains_that_were_lost_while_the_line_was_down_are_found_later()
    {
        await Backlog("shop/mains", Steady(1, Minutes(1), TwoAtNight - Minutes(5), TwoAtNight).Concat(Steady(0, Minutes(1), TwoAtNight + Minutes(1), TwoAtNight + Minutes(4))));
        Assert.Equal("shop.mains-lost.mains", Assert.Single(Found, f => f.Alarm is not null).Alarm!.Id);
    }

    [Fact]
    public async Task What_comes_in_time_is_never_found_later()
    {
        await studio.Send("furnace-1/crown", Steady(1302, Seconds(10), Six, Six + Minutes(5)));
        Assert.Empty(studio.The<FoundLater>().Between(Six - Hours(12), Six + Hours(1)));
        Assert.NotEmpty(studio.The<IAlarmDesk>().Current);
    }
}
