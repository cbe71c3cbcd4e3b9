using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>Troubles that come with a crowd of consequences: the phone hears of the cause, once.</summary>
public sealed class OneCauseOneCallTests
{
    [Fact]
    public Task A_silent_device_with_three_channels_is_one_call() => Rings("annealer-1 silent", studio => studio.Sensors.Silence("annealer-1/"), minutes: 5);

    [Fact]
    public Task Mains_lost_is_one_call_although_fire_and_devices_go_with_it() => Rings("shop mains lost", studio =>
    {
        studio.Sensors["shop/mains"] = 0;
        studio.Sensors["furnace-1/flame"] = 0;
        studio.Sensors["glory-hole-1/flame"] = 0;
        studio.Sensors.Silence("annealer-");
    }, minutes: 2);

    [Fact]
    public Task A_burner_that_locks_out_is_one_call_and_its_lost_flame_none() => Rings("furnace-1 lock-out", studio =>
    {
        studio.Sensors["furnace-1/lock-out"] = 1;
        studio.Sensors["furnace-1/flame"] = 0;
        studio.Sensors["furnace-1/gas-flow"] = 0;
    }, minutes: 2);

    [Fact]
    public Task Carbon_monoxide_above_both_limits_is_one_call() => Rings("shop carbon monoxide", studio => studio.Sensors["shop/carbon-monoxide"] = 80, minutes: 2);

    [Fact]
    public Task Combustible_gas_above_both_limits_is_one_call() => Rings("shop combustible gas", studio => studio.Sensors["shop/combustible-gas"] = 25, minutes: 2);

    static Task Rings(string what, Action<NightStudio> happens, int minutes) => NightStudio.Play(async studio =>
    {
        await studio.Pass(3);
        happens(studio);
        await studio.Pass(minutes);
        var first = await studio.Heard();
        Assert.Equal([$"{NightPlan.First} mail call #1", $"{NightPlan.First} push call #1"], first.Select(h => $"{h.Phone} {h.Way} {h.Kind} #{h.Round}"));
        var occurrence = first[1].Occurrence!;
        Assert.StartsWith(what.Split(' ')[0] + "." + string.Join('-', what.Split(' ')[1..]), occurrence, StringComparison.Ordinal);

        // Everything that follows from it has rung by now, if it were to ring: the rounds go on about the one cause alone.
        await studio.Pass(12);
        var later = await studio.Heard();
        Assert.All(later.Where(h => h.Way == "push"), h => Assert.Equal(occurrence, h.Occurrence));
        Assert.Equal(later.Select(h => (h.Phone, h.Way, h.Round)).Distinct().Count(), later.Count);
    });
}
