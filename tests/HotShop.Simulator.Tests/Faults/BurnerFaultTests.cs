using HotShop.Simulator.Faults;

namespace HotShop.Simulator.Tests.Faults;

/// <summary>What each fault of a burner looks like from outside. The day begins at 8:00; at 4 h the glory hole works.</summary>
public class BurnerFaultTests
{
    const string Hole = Quillmere.GloryHole, Furnace = Quillmere.Furnace;

    [Theory, InlineData(Hole, 250), InlineData(Furnace, 70)]
    public void A_flame_out_with_gas_on_cools_while_gas_flows_and_heat_is_called_for(string appliance, double leastFallKelvin)
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.FlameOutWithGas, appliance, 4, 0.4));
        studio.Advance(Run.At(3.99));
        var before = Hot(studio, appliance);
        var during = new Recording(studio.Advance(Run.At(4.39)));
        Assert.InRange(before - Hot(studio, appliance), leastFallKelvin, 600);
        Assert.All(during.Values($"{appliance}/flame", 4.01, 4.39), flame => Assert.Equal(0, flame));
        Assert.All(during.Values($"{appliance}/call-for-heat", 4.01, 4.39), call => Assert.Equal(1, call));
        Assert.All(during.Values($"{appliance}/lock-out", 4.01, 4.39), lockOut => Assert.Equal(0, lockOut));
        Assert.All(during.Values($"{appliance}/gas-flow", 4.02, 4.39), flow => Assert.True(flow > 0.5));
        Assert.True(during.Values("shop/combustible-gas", 4.3, 4.39).Average() > 1, "unburnt gas reaches the shop");

        // Somebody shuts off, purges and relights.
        var after = new Recording(studio.Advance(Run.At(6)));
        Assert.Equal(1, after.Values($"{appliance}/flame", 5, 6)[^1]);
        Assert.InRange(Hot(studio, appliance), before - 25, before + 25);
    }

    [Fact]
    public void Lost_gas_locks_the_burner_out_with_no_flow_until_it_is_reset()
    {
        var seen = Recording.Of(6, Run.Fault(FaultKind.GasSupplyLost, Quillmere.Shop, 4, 0.5));
        foreach (var appliance in new[] { Furnace, Hole })
        {
            Assert.All(seen.Values($"{appliance}/gas-flow", 4.01, 4.5), flow => Assert.Equal(0, flow));
            Assert.Equal(1, seen.Last($"{appliance}/lock-out", 4.4));
            Assert.Equal(1, seen.Last($"{appliance}/call-for-heat", 4.4));
            Assert.Equal(0, seen.Last($"{appliance}/lock-out", 5));
            Assert.Equal(1, seen.Last($"{appliance}/flame", 5));
        }

        Assert.Equal(seen.Last("shop/meter", 4.02), seen.Last("shop/meter", 4.5));
    }

    [Fact]
    public void A_stuck_controller_overheats_until_the_high_limit_locks_out()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.Overheat, Furnace, 4, 2));
        var seen = new List<DeviceMessage>();
        var highest = 0.0;
        for (var hours = 0.0; hours < 6; hours += 0.01)
        {
            seen.AddRange(studio.Advance(Run.At(hours)));
            highest = Math.Max(highest, studio.Truth.CrownCelsius);
        }

        var during = new Recording(seen);
        Assert.InRange(highest, 1290, 1305);
        Assert.Equal(1, during.Last("furnace-1/lock-out", 5.9));
        Assert.True(during.Values("furnace-1/gas-flow", 4.05, 4.3).Min() > 7, "high fire");

        var after = new Recording(studio.Advance(Run.At(12)));
        Assert.Equal(0, after.Last("furnace-1/lock-out", 12));
        Assert.Equal(1, after.Last("furnace-1/flame", 12));
    }

    [Fact]
    public void A_cycling_burner_goes_on_and_off_by_itself_and_holds_the_temperature()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.BurnerCycling, Furnace, 1, 4));
        var seen = new Recording(studio.Advance(Run.At(5)));
        var calls = seen.Values("furnace-1/call-for-heat", 1.5, 5);
        Assert.InRange(calls.Zip(calls.Skip(1), (a, b) => a != b).Count(changed => changed), 20, 400);
        Assert.InRange(studio.Plant.Furnace.Crown.IndicatedCelsius, 1140, 1160);
        Assert.All(seen.Values("furnace-1/lock-out", 1, 5), lockOut => Assert.Equal(0, lockOut));
    }

    [Fact]
    public void A_door_left_open_costs_gas_but_hardly_heat()
    {
        var (open, shut) = (Run.Studio(1, Run.Fault(FaultKind.DoorLeftOpen, Hole, 4, 0.5)), Run.Studio(1));
        var (seen, usual) = (new Recording(open.Advance(Run.At(4.5))), new Recording(shut.Advance(Run.At(4.5))));
        Assert.True(seen.Values("glory-hole-1/gas-flow", 4.2, 4.5).Average() > 1.4 * usual.Values("glory-hole-1/gas-flow", 4.2, 4.5).Average());
        Assert.Equal(1, seen.Last("glory-hole-1/door", 4.5));
        Assert.InRange(open.Truth.GloryHoleCelsius, 1100, 1210);
    }

    [Fact]
    public void A_power_cut_puts_every_fire_out_and_people_bring_them_back()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.PowerCut, Quillmere.Shop, 4, 0.25));
        var seen = new Recording(studio.Advance(Run.At(6)));
        Assert.Equal(0, seen.Last("shop/mains", 4.2));
        foreach (var appliance in new[] { Furnace, Hole }) Assert.Equal(0, seen.Last($"{appliance}/flame", 4.2));
        Assert.All(seen.Values("annealer-2/power", 4.01, 4.25), kilowatts => Assert.Equal(0, kilowatts));
        Assert.NotEmpty(seen.Values("furnace-1/crown", 4.1, 4.2));      // the devices go on from their battery
        Assert.Equal(1, seen.Last("shop/mains", 6));
        foreach (var appliance in new[] { Furnace, Hole }) Assert.Equal(1, seen.Last($"{appliance}/flame", 6));
    }

    [Fact]
    public void An_evening_shutdown_is_a_call_that_ends_and_a_mode_that_says_so()
    {
        var seen = Recording.Of(11);
        Assert.Equal(0, seen.Last("glory-hole-1/call-for-heat", 11));
        Assert.Equal(0, seen.Last("glory-hole-1/lock-out", 11));
        Assert.Contains(seen.Messages, m => m.Topic == "hotshop/quillmere/glory-hole-1/log" && m.Payload.Contains("\"off\"", StringComparison.Ordinal) && m.At > Run.At(10));
    }

    [Fact]
    public void A_cold_charge_cools_the_crown_and_it_recovers()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.ColdCharge, Furnace, 2, 1));
        var lowest = double.PositiveInfinity;
        for (var hours = 2.0; hours < 4; hours += 0.02)
        {
            studio.Advance(Run.At(hours));
            lowest = Math.Min(lowest, studio.Plant.Furnace.Crown.IndicatedCelsius);
        }

        Assert.InRange(lowest, 1040, 1100);
        Assert.InRange(studio.Plant.Furnace.Crown.IndicatedCelsius, 1140, 1160);
    }

    static double Hot(SimulatedStudio studio, string appliance) => appliance == Hole ? studio.Truth.GloryHoleCelsius : studio.Truth.CrownCelsius;
}
