using HotShop.Monitor.Configuration;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>What a working studio does every day: nobody's phone rings.</summary>
public sealed class QuietStudioTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public Task An_evening_shutdown_of_the_glory_hole_calls_nobody_whether_or_not_somebody_taps_the_mode(bool isTapped) => Quiet(async studio =>
    {
        if (isTapped) await studio.Sensors.Log("glory-hole-1", """{"entry":"mode","mode":"off","who":"bench 1"}""");
        await studio.Pass(120, minute =>
        {
            studio.Sensors["glory-hole-1/call-for-heat"] = 0;
            studio.Sensors["glory-hole-1/flame"] = 0;
            studio.Sensors["glory-hole-1/gas-flow"] = 0;
            studio.Sensors["glory-hole-1/chamber"] = 20 + 1160 * Math.Exp(-minute / 90.0);
        });
    });

    [Fact]
    public Task A_door_held_open_for_twenty_minutes_calls_nobody() => Quiet(async studio =>
    {
        await studio.Pass(20, minute =>
        {
            studio.Sensors["glory-hole-1/door"] = 1;
            studio.Sensors["glory-hole-1/chamber"] = 1180 - 15 * minute;
            studio.Sensors["annealer-1/chamber"] = 480 - 2.5 * minute;
        });
        await studio.Pass(40, minute =>
        {
            studio.Sensors["glory-hole-1/door"] = 0;
            studio.Sensors["glory-hole-1/chamber"] = Math.Min(1180, 895 + 15 * minute);
            studio.Sensors["annealer-1/chamber"] = Math.Min(480, 432 + 8 * minute);
        });
    });

    /// <summary>The furnace has no flame sensor here: its temperature alone could ring.</summary>
    [Fact]
    public Task A_cold_charge_calls_nobody_although_the_furnace_falls_with_the_gas_on() => NightStudio.Play(async studio =>
    {
        await studio.Pass(40);
        await studio.Sensors.Log("furnace-1", """{"entry":"mode","mode":"charging","who":"bench 1"}""");
        await studio.Sensors.Log("furnace-1", """{"entry":"charge","material":"batch","mass":30,"unit":"kg","who":"bench 1"}""");
        await studio.Pass(25, minute =>
        {
            studio.Sensors["furnace-1/gas-flow"] = 11;
            studio.Sensors["furnace-1/crown"] = 1150 - 3 * minute;   // 180 K/h: thrice the limit of a plain deviation
        });
        await studio.Pass(60, minute => studio.Sensors["furnace-1/crown"] = Math.Min(1150, 1078 + 1.5 * minute));
        Assert.Empty(await studio.Heard());
    }, WithoutFlameSensor);

    /// <summary>The other side of the cold charge: so much of the quiet is worth as this rings.</summary>
    [Fact]
    public Task The_same_fall_of_a_furnace_that_nobody_charges_does_call() => NightStudio.Play(async studio =>
    {
        await studio.Pass(40);
        await studio.Pass(30, minute => studio.Sensors["furnace-1/crown"] = 1150 - 3 * minute);
        var call = (await studio.Heard()).First(h => h.Way == "push");
        Assert.StartsWith("furnace-1.falling-with-gas", call.Occurrence!, StringComparison.Ordinal);
    }, WithoutFlameSensor);

    [Fact]
    public Task A_burner_that_cycles_calls_nobody() => Quiet(studio => studio.Pass(90, minute =>
    {
        // Four minutes of fire, three of rest; each start takes a minute from the call to the flame.
        var turn = minute % 7;
        studio.Sensors["furnace-1/call-for-heat"] = turn < 4 ? 1 : 0;
        studio.Sensors["furnace-1/flame"] = turn is > 0 and < 4 ? 1 : 0;
        studio.Sensors["furnace-1/gas-flow"] = turn is > 0 and < 4 ? 10 : 0;
    }));

    static StudioConfiguration WithoutFlameSensor(StudioConfiguration studio) => studio.With("furnace-1",
        furnace => furnace with { Channels = [.. furnace.Channels.Where(c => c.Id is not ("flame" or "call-for-heat" or "lock-out"))] });

    static Task Quiet(Func<NightStudio, Task> story) => NightStudio.Play(async studio =>
    {
        await studio.Pass(3);
        await story(studio);
        await studio.Pass(5);
        Assert.Empty(await studio.Heard());
    });
}
