using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class LimitStories
{
    [Fact] public void A_crown_over_its_limit_for_a_minute_rings_once()
    {
        var story = new Story().Set("furnace-1/crown", 1302).Minutes(30);

        var raised = story.Only(AlarmChange.Raised).Occurrence;
        Assert.Equal("furnace-1.overheat.crown", raised.AlarmId);
        Assert.Equal((1302, 1290, "Cel", 1), (raised.Value, raised.Limit, raised.Unit, raised.Priority));
        Assert.Equal(Story.Start + Duration.FromSeconds(10), raised.Since);
        Assert.Equal("Furnace 1 crown is 1302 °C (2376 °F), limit 1290 °C (2354 °F)", raised.Words.Sentence);
        Assert.Equal(raised.Since + Duration.FromSeconds(60), story.Only(AlarmChange.Raised).At);
    }

    [Fact] public void A_short_flare_rings_nobody() => Assert.Empty(new Story().Set("furnace-1/crown", 1302).Seconds(50).Set("furnace-1/crown", 1200).Minutes(10).Raised);

    [Fact] public void One_wrong_sample_alone_rings_nobody_however_old_it_gets() =>
        Assert.Empty(new Story().Set("furnace-1/crown", 1302).Seconds(10).Silent("furnace-1/crown").Minutes(0.8).Raised);

    [Fact] public void It_clears_only_below_the_deadband_and_after_the_off_delay()
    {
        var story = new Story().Set("furnace-1/crown", 1302).Minutes(3);
        Assert.Equal([AlarmChange.Raised], story.Set("furnace-1/crown", 1285).Minutes(10).Happened.Select(t => t.Change));

        story.Set("furnace-1/crown", 1270).Seconds(60);
        Assert.Single(story.Happened);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, story.Seconds(20).Only(AlarmChange.Cleared).Occurrence.State);
    }

    [Fact] public void A_sensor_that_falls_silent_leaves_the_alarm_standing()
    {
        var story = new Story().Set("furnace-1/crown", 1302).Minutes(3).Silent("furnace-1/crown").Minutes(60);
        Assert.DoesNotContain(story.Happened, t => t.Change == AlarmChange.Cleared);
        Assert.Equal(["furnace-1.overheat.crown", "furnace-1.silent.crown"], story.Rang);
    }

    [Fact] public void A_value_that_cannot_be_does_not_ring_as_heat() =>
        Assert.Equal(["furnace-1.silent.crown"], new Story().Set("furnace-1/crown", 1800).Minutes(10).Rang);

    [Theory, InlineData(Mode.Off), InlineData(Mode.OutOfService), InlineData(Mode.CoolDown), InlineData(Mode.HeatUp)]
    public void No_mode_silences_heat_or_carbon_monoxide(Mode mode) =>
        Assert.Equal(["furnace-1.overheat.crown", "shop.carbon-monoxide.carbon-monoxide"],
            new Story().SetMode("furnace-1", mode).SetMode("shop", mode).Set("furnace-1/crown", 1302).Set("shop/carbon-monoxide", 90).Minutes(5).Rang.Order());

    [Fact] public void Heat_that_began_before_a_restart_is_counted_from_its_beginning()
    {
        var story = new Story().Set("furnace-1/crown", 1302).Seconds(30).Downtime(Duration.FromMinutes(15)).Seconds(10);
        var raised = story.Only(AlarmChange.Raised);
        Assert.Equal(Story.Start + Duration.FromSeconds(10), raised.Occurrence.Since);
        Assert.Equal(story.Now, raised.At);
    }

    [Fact] public void The_limits_the_owner_typed_hold()
    {
        var plan = TestStudio.With("furnace-1", a => a.WithAlarm("overheat", new() { Limit = "2300 °F", Deadband = "18 °F", OnDelaySeconds = 20, Priority = 2 }));
        var raised = new Story(plan).Set("furnace-1/crown", 1261).Minutes(1).Only(AlarmChange.Raised).Occurrence;
        Assert.Equal(1260, raised.Limit!.Value, 0.001);
        Assert.Equal(2, raised.Priority);
    }

    [Fact] public void An_alarm_that_is_switched_off_does_not_ring() =>
        Assert.Empty(new Story(TestStudio.With("furnace-1", a => a.WithAlarm("overheat", new() { Enabled = false }))).Set("furnace-1/crown", 1302).Minutes(5).Raised);

    [Fact] public void Carbon_monoxide_warns_at_35_and_wakes_at_70_ppm()
    {
        var story = new Story().Set("shop/carbon-monoxide", 40).Minutes(3);
        Assert.Equal((2, "Shop: carbon monoxide is 40 ppm, limit 35 ppm"), (story.Only(AlarmChange.Raised).Occurrence.Priority, story.Only(AlarmChange.Raised).Occurrence.Words.Sentence));
        Assert.Equal(["shop.carbon-monoxide-warning.carbon-monoxide", "shop.carbon-monoxide.carbon-monoxide"], story.Set("shop/carbon-monoxide", 82).Minutes(3).Rang);
        Assert.Equal(1, story.Happened[^1].Occurrence.Priority);
    }

    [Fact] public void Carbon_monoxide_far_above_both_limits_makes_one_call() =>
        Assert.Equal(["shop.carbon-monoxide.carbon-monoxide"], new Story().Set("shop/carbon-monoxide", 200).Minutes(10).Rang);

    [Fact] public void Combustible_gas_warns_at_10_and_wakes_at_20_percent_of_the_lower_explosive_limit()
    {
        var story = new Story().Set("shop/combustible-gas", 12).Minutes(3).Set("shop/combustible-gas", 24).Minutes(3);
        Assert.Equal(["shop.combustible-gas-warning.combustible-gas", "shop.combustible-gas.combustible-gas"], story.Rang);
        Assert.Equal("Shop: combustible gas is 24 % of the lower explosive limit, limit 20 %", story.Happened[^1].Occurrence.Words.Sentence);
    }

    [Fact] public void An_old_reading_that_comes_after_a_newer_one_changes_nothing()
    {
        var story = new Story();
        for (var i = 0; i < 20; i++) story.Do(new AlarmEvent.Sample("furnace-1/crown", Story.Start - Duration.FromSeconds(60 - i), 1400, true, story.Now));
        Assert.Empty(story.Raised);
    }
}
