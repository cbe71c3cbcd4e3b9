using HotShop.Monitor.Alarms;
using HotShop.Monitor.Modes;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class FireStories
{
    static Story CyclingBurner(Story story, int cycles)
    {
        for (var i = 0; i < cycles; i++)
        {
            story.Set("furnace-1/call-for-heat", 0).Set("furnace-1/flame", 0).Set("furnace-1/gas-flow", 0).Minutes(4);
            story.Set("furnace-1/call-for-heat", 1).Seconds(40).Set("furnace-1/flame", 1).Set("furnace-1/gas-flow", 3).Minutes(6);
        }
        return story;
    }

    [Fact] public void A_flame_lost_while_heat_is_called_for_rings_and_tells_of_the_gas()
    {
        var raised = new Story().Set("furnace-1/flame", 0).Minutes(5).Only(AlarmChange.Raised).Occurrence;
        Assert.Equal(("furnace-1.flame-failure", 1), (raised.AlarmId, raised.Priority));
        Assert.Equal("Furnace 1: no flame seen although fire is wanted, and gas still flows (2.0 m³/h, 71 ft³/h)", raised.Words.Sentence);
    }

    [Fact] public void A_cycling_burner_rings_nobody() => Assert.Empty(CyclingBurner(new Story(), cycles: 20).Raised);

    [Fact] public void A_burner_that_stops_lighting_rings_after_its_trial_for_ignition()
    {
        var story = CyclingBurner(new Story(), cycles: 2).Set("furnace-1/call-for-heat", 0).Set("furnace-1/flame", 0).Minutes(4).Set("furnace-1/call-for-heat", 1);
        var asked = story.Now;
        Assert.Equal(asked + Duration.FromSeconds(100), story.Minutes(5).Only(AlarmChange.Raised).At);
    }

    [Fact] public void An_evening_shutdown_of_a_glory_hole_rings_nobody() =>
        Assert.Empty(new Story().SetMode("glory-hole-1", Mode.Off).Set("glory-hole-1/flame", 0).Set("glory-hole-1/gas-flow", 0).Slope("glory-hole-1/chamber", 1150, -400).Minutes(120).Raised);

    [Fact] public void A_shutdown_whose_tap_comes_some_minutes_late_rings_nobody() =>
        Assert.Empty(new Story().Set("glory-hole-1/flame", 0).Set("glory-hole-1/gas-flow", 0).Minutes(10).SetMode("glory-hole-1", Mode.CoolDown).Minutes(120).Raised);

    [Fact] public void A_glory_hole_without_flame_in_working_hours_rings() =>
        Assert.Equal(["glory-hole-1.flame-failure"], new Story().Set("glory-hole-1/flame", 0).Minutes(20).Rang);

    [Fact] public void Switching_off_ends_a_flame_failure_and_switching_on_without_flame_brings_a_new_one()
    {
        var story = new Story().Set("glory-hole-1/flame", 0).Minutes(20).SetMode("glory-hole-1", Mode.Off).Minutes(1);
        Assert.Equal([AlarmChange.Raised, AlarmChange.Cleared], story.Happened.Select(t => t.Change));
        story.SetMode("glory-hole-1", Mode.Working).Minutes(20);
        Assert.Equal(2, story.Happened.Where(t => t.Change == AlarmChange.Raised).Select(t => t.Occurrence.Id).Distinct().Count());
    }

    [Fact] public void A_silent_call_for_heat_makes_no_flame_failure() =>
        Assert.DoesNotContain("furnace-1.flame-failure", new Story().Silent("furnace-1/call-for-heat").Minutes(2).Set("furnace-1/flame", 0).Minutes(20).Raised);

    [Fact] public void A_lock_out_rings_and_the_missing_flame_that_follows_calls_nobody_twice()
    {
        var story = new Story().Set("furnace-1/lock-out", 1).Set("furnace-1/flame", 0).Set("furnace-1/gas-flow", 0).Minutes(10);
        Assert.Equal(["furnace-1.lock-out.lock-out"], story.Rang);
        Assert.Equal(["furnace-1.lock-out.lock-out", "furnace-1.flame-failure"], story.Raised);
        Assert.Equal("furnace-1.lock-out.lock-out", story.Happened[^1].Occurrence.InhibitedBy);
    }

    [Fact] public void A_flame_still_missing_after_its_lock_out_was_reset_rings_in_its_own_right()
    {
        var story = new Story().Set("furnace-1/lock-out", 1).Set("furnace-1/flame", 0).Minutes(10).Set("furnace-1/lock-out", 0).Minutes(10);
        Assert.Equal(["furnace-1.lock-out.lock-out", "furnace-1.flame-failure"], story.Rang);
    }

    [Fact] public void A_contact_that_sends_only_changes_rings_on_one_message() =>
        Assert.Equal(["shop.lock-out.burner-fault"], new Story().Set("shop/burner-fault", 1).Seconds(10).Silent("shop/burner-fault").Minutes(5).Rang);

    [Fact] public void Mains_lost_rings_once_and_what_follows_from_it_calls_nobody()
    {
        var story = new Story().Set("shop/mains", 0).SilentAppliance("annealer-1").Set("furnace-1/flame", 0).Set("furnace-1/lock-out", 1).Minutes(15);
        Assert.Equal(["shop.mains-lost.mains"], story.Rang);
        Assert.Contains("annealer-1.silent.chamber", story.Raised);
    }

    [Fact] public void A_flicker_of_the_mains_shorter_than_ten_seconds_rings_nobody() =>
        Assert.Empty(new Story().Set("shop/mains", 0).Seconds(10).Set("shop/mains", 1).Minutes(5).Raised);

    [Fact] public void Without_a_flame_sensor_a_fall_with_gas_flowing_rings_and_says_that_it_is_inferred()
    {
        var story = new Story().Minutes(40).Slope("furnace-2/crown", 1150, -120).Minutes(60);
        var raised = story.Only(AlarmChange.Raised).Occurrence;
        Assert.Equal("furnace-2.falling-with-gas", raised.AlarmId);
        Assert.Contains("Inferred", raised.Words.Sentence, StringComparison.Ordinal);
    }

    [Fact] public void A_furnace_turned_down_falls_without_ringing() =>
        Assert.Empty(new Story().Minutes(40).Slope("furnace-2/crown", 1150, -120).Set("furnace-2/gas-flow", 1).Minutes(25).Set("furnace-2/crown", 1100).Minutes(60).Raised);

    [Fact] public void A_cold_charge_rings_nobody() =>
        Assert.Empty(new Story().SetMode("furnace-2", Mode.Charging).Minutes(40).Set("furnace-2/gas-flow", 3)
            .Slope("furnace-2/crown", 1150, -300).Minutes(12).Slope("furnace-2/crown", 1090, 60).Minutes(60).Set("furnace-2/crown", 1150).Minutes(60).Raised);

    [Fact] public void A_furnace_with_a_flame_sensor_is_not_judged_by_its_fall() =>
        Assert.DoesNotContain(new Story().Engine.Definitions, d => d.Id == "furnace-1.falling-with-gas");
}
