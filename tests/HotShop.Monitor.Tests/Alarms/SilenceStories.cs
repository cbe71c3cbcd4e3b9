using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class SilenceStories
{
    [Fact] public void A_channel_is_silent_after_four_intervals_and_at_least_a_minute()
    {
        var story = new Story().Silent("furnace-1/crown");
        Assert.Empty(story.Seconds(50).Raised);
        var raised = story.Seconds(10).Only(AlarmChange.Raised).Occurrence;
        Assert.Equal(("furnace-1.silent.crown", 2, Story.Start), (raised.AlarmId, raised.Priority, raised.Since));
        Assert.Equal("Furnace 1 crown has sent nothing for more than 60 s", raised.Words.Sentence);
    }

    [Fact] public void A_channel_that_reports_changes_may_be_quiet_for_a_day()
    {
        var story = new Story().Silent("glory-hole-1/door").Run(Duration.FromHours(25));
        Assert.Empty(story.Raised);
        Assert.Equal(["glory-hole-1.silent.door"], story.Run(Duration.FromHours(2)).Raised);
    }

    [Fact] public void A_silent_device_makes_one_call_and_shows_the_rest()
    {
        var story = new Story().SilentAppliance("furnace-1").Minutes(10);
        Assert.Equal(["furnace-1.silent.crown"], story.Rang);
        Assert.Equal(6, story.Raised.Count);
    }

    [Fact] public void Silence_while_the_broker_is_in_trouble_calls_for_the_broker_alone()
    {
        var story = new Story().Part(HealthBoard.Broker, isWorking: false).SilentAppliance("furnace-1").SilentAppliance("annealer-1").Minutes(10);
        Assert.Equal(["service.service-trouble.broker"], story.Rang);
        Assert.Contains("annealer-1.silent.chamber", story.Raised);
    }

    [Fact] public void A_channel_still_silent_when_the_broker_is_back_calls_after_its_grace()
    {
        var story = new Story().Part(HealthBoard.Broker, isWorking: false).Silent("annealer-1/chamber").Minutes(10).Part(HealthBoard.Broker, isWorking: true).Minutes(10);
        Assert.Equal(["service.service-trouble.broker", "annealer-1.silent.chamber"], story.Rang);
    }

    [Fact] public void A_broker_that_is_back_within_two_minutes_calls_nobody() =>
        Assert.Empty(new Story().Part(HealthBoard.Broker, isWorking: false).Minutes(1.5).Part(HealthBoard.Broker, isWorking: true).Minutes(10).Raised);

    [Fact] public void After_a_restart_there_is_an_interval_and_a_minute_of_grace_and_the_message_says_so()
    {
        var story = new Story().Silent("furnace-1/crown").Downtime(Duration.FromHours(1)).Seconds(60);
        Assert.Empty(story.Raised);
        var raised = story.Seconds(20).Only(AlarmChange.Raised).Occurrence;
        Assert.Equal("Furnace 1 crown has sent nothing since the service started (70 s allowed after a start)", raised.Words.Sentence);
    }

    [Fact] public void A_computer_that_slept_gives_every_channel_its_grace_again()
    {
        var story = new Story();
        var asleep = story.Now + Duration.FromHours(6);
        story.Do(new AlarmEvent.Tick(asleep)).Do(new AlarmEvent.Tick(asleep + Duration.FromSeconds(60)));
        Assert.Empty(story.Raised);
        Assert.Contains("furnace-1.silent.crown", story.Do(new AlarmEvent.Tick(asleep + Duration.FromSeconds(71))).Raised);
    }

    [Fact] public void In_a_fast_demo_a_few_real_seconds_are_no_silence()
    {
        var pace = AlarmPace.ForSpeed(600);
        Assert.Equal(Duration.FromMinutes(50), pace.LeastSilence);
        Assert.All(AlarmDefinitions.Of(TestStudio.Plan, pace).Where(d => d is { Kind: "silent", Channel: not ("door" or "burner-fault") }), d => Assert.Equal(3000, d.Limit));
        Assert.Equal(Duration.FromSeconds(60), AlarmPace.Real.LeastSilence);
    }

    [Fact] public void A_restart_makes_no_silence_where_everything_still_speaks() =>
        Assert.Empty(new Story().Downtime(Duration.FromHours(5)).Minutes(10).Raised);

    [Fact] public void A_broken_couple_is_told_as_a_sensor_that_says_nothing_usable() =>
        Assert.Equal("Furnace 1 crown has sent nothing usable for more than 60 s: last 1820 °C, which it cannot be",
            new Story().Set("furnace-1/crown", 1820).Minutes(5).Only(AlarmChange.Raised).Occurrence.Words.Sentence);

    [Fact] public void It_clears_when_the_channel_speaks_again()
    {
        var story = new Story().Silent("furnace-1/crown").Minutes(5).Set("furnace-1/crown", 1150).Minutes(2);
        Assert.Equal([AlarmChange.Raised, AlarmChange.Cleared], story.Happened.Select(t => t.Change));
    }

    [Theory, InlineData(Mode.Off), InlineData(Mode.OutOfService)]
    public void An_appliance_that_is_off_may_be_silent(Mode mode) =>
        Assert.Empty(new Story().SetMode("glory-hole-1", mode).SilentAppliance("glory-hole-1").Minutes(60).Raised);

    [Fact] public void A_silence_that_a_mode_hid_rings_when_the_appliance_is_wanted_again()
    {
        var story = new Story().Silent("furnace-1/crown").Minutes(5).SetMode("furnace-1", Mode.OutOfService).Minutes(5).SetMode("furnace-1", Mode.Holding).Minutes(5);
        Assert.Equal(["furnace-1.silent.crown", "furnace-1.silent.crown"], story.Rang);
        Assert.Equal(2, story.Happened.Select(t => t.Occurrence.Id).Distinct().Count());
    }

    [Theory, InlineData("broker"), InlineData("store"), InlineData("disk"), InlineData("clock"), InlineData("outbox")]
    public void Trouble_of_the_service_rings_after_two_minutes_and_ends_with_it(string part)
    {
        var story = new Story().Part(part, isWorking: false, "disk full: free some space").Minutes(5).Part(part, isWorking: true).Minutes(5);
        Assert.Equal($"service.service-trouble.{part}", story.Only(AlarmChange.Raised).Occurrence.AlarmId);
        Assert.Equal($"The monitor has trouble with its {part}: disk full: free some space", story.Only(AlarmChange.Raised).Occurrence.Words.Sentence);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, story.Only(AlarmChange.Cleared).Occurrence.State);
    }
}
