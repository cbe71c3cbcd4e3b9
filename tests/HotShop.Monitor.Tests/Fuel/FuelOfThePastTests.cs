using HotShop.Monitor.Fuel;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Fuel;

/// <summary>A configuration that changes: the fuel of before keeps the facts of before, and the parts still add up.</summary>
public sealed class FuelOfThePastTests
{
    static readonly Instant Eight = OpenStudio.Start;

    [Fact]
    public async Task A_new_heating_value_counts_from_the_moment_the_service_runs_with_it()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Minutes(90)));
        var before = studio.Fuel("furnace-1", Eight, Eight + Minutes(90));
        await studio.Restart(SomeStudio.Configuration with { Gas = new() { GrossKilowattHoursPerCubicMetre = 2 * 10.55 } });
        Assert.Equal(before.EnergyKilowattHours, studio.Fuel("furnace-1", Eight, Eight + Minutes(90)).EnergyKilowattHours, 9);
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight + Minutes(90) + Seconds(10), Eight + Hours(3)));
        studio.Now = Eight + Hours(4);
        await studio.Move();
        // Half the three hours at the old value, half at the new one; the hour with the change in it is divided where it changed.
        Assert.Equal(3 * before.EnergyKilowattHours, studio.Fuel("furnace-1", Eight, Eight + Hours(3)).EnergyKilowattHours, 9);
        Assert.Equal(1, studio.Fuel("furnace-1", Eight, Eight + Hours(3)).MeasuredShare, 12);
        Assert.Equal(2 * before.BaseCubicMetres, studio.Fuel("furnace-1", Eight, Eight + Hours(3)).BaseCubicMetres, 9);
    }

    [Fact]
    public async Task A_counter_that_takes_the_place_of_a_flow_meter_does_not_make_its_past_free()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Hours(2)));
        var before = studio.Fuel("furnace-1", Eight, Eight + Hours(2));
        await studio.Restart(SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels, SomeStudio.Channel("gas-meter", "gas-volume", 60)] }));
        await studio.Send("furnace-1/gas-meter", Every(Minutes(1), Eight + Hours(2), Eight + Hours(4)).Select(at => (at, 2 * (at - Eight).TotalHours)));
        Assert.Equal(before.EnergyKilowattHours, studio.Fuel("furnace-1", Eight, Eight + Hours(2)).EnergyKilowattHours, 9);
    }
}
