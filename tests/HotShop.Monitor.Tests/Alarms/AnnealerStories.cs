using HotShop.Monitor.Alarms;
using HotShop.Monitor.Modes;
using HotShop.Physics.Annealing;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class AnnealerStories
{
    const string Chamber = "annealer-1/chamber", Setpoint = "annealer-1/setpoint", Drift = "annealer-1.annealer-drift";

    [Fact] public void An_annealer_below_its_setpoint_for_half_an_hour_rings()
    {
        var raised = new Story().Set(Chamber, 473).Minutes(45).Only(AlarmChange.Raised).Occurrence;
        Assert.Equal((Drift, -22.0, 15.0), (raised.AlarmId, raised.Value, raised.Limit));
        Assert.Equal("Annealer 1 is 22 °C (40 °F) below its curve of 495 °C (923 °F), limit 15 °C (27 °F)", raised.Words.Sentence);
    }

    [Fact] public void A_door_opened_for_loading_rings_nobody()
    {
        var story = new Story();
        for (var i = 0; i < 10; i++) story.Set(Chamber, 430).Minutes(2).Slope(Chamber, 440, 300).Minutes(11).Set(Chamber, 494).Minutes(10);
        Assert.Empty(story.Raised);
    }

    [Fact] public void A_setpoint_that_stops_with_its_programme_rings_nobody() =>
        Assert.Empty(new Story().Slope(Chamber, 495, -60).Slope(Setpoint, 495, -60).Minutes(180).Silent(Setpoint).Minutes(300).Raised);

    [Fact] public void Cooling_more_slowly_than_a_setpoint_far_below_rings_nobody() =>
        Assert.Empty(new Story().Slope(Setpoint, 495, -100).Slope(Chamber, 495, -100).Minutes(75).Slope(Chamber, 370, -30).Minutes(180).Raised);

    [Fact] public void Cooling_more_slowly_than_the_curve_while_it_still_matters_rings() =>
        Assert.Equal([Drift], new Story().Slope(Setpoint, 495, -40).Slope(Chamber, 495, -10).Minutes(120).Rang);

    [Fact] public void Heating_up_from_cold_rings_nobody() =>
        Assert.Empty(new Story().Silent(Setpoint).Set(Chamber, 40).Minutes(10).Set(Setpoint, 495).Slope(Chamber, 40, 230).Minutes(118).Set(Chamber, 495).Minutes(30).Raised);

    [Fact] public void An_annealer_that_never_gets_up_rings_in_the_end() =>
        Assert.Equal([Drift], new Story().Silent(Setpoint).Set(Chamber, 40).Minutes(10).Set(Setpoint, 495).Slope(Chamber, 40, 40).Minutes(300).Rang);

    [Fact] public void An_annealer_that_is_off_is_on_no_curve() =>
        Assert.Empty(new Story().SetMode("annealer-1", Mode.Off).Slope(Chamber, 495, -100).Minutes(200).Raised);

    [Fact] public void A_typed_curve_goes_before_the_setpoint()
    {
        var curve = new AnnealingCurve(Story.Start, 495, [new Stage.Hold(Duration.FromHours(1)), new Stage.Ramp(449, 20), new Stage.Ramp(60, 100)]);
        Assert.Empty(new Story().Curve("annealer-1", curve).Set(Setpoint, 300).Minutes(60).Slope(Chamber, 495, -20).Minutes(100).Raised);
        Assert.Equal([Drift], new Story().Curve("annealer-1", curve).Minutes(200).Rang);
    }

    [Fact] public void Too_hot_for_any_ware_rings_whatever_the_setpoint() =>
        Assert.Equal(["annealer-1.overheat.chamber"], new Story().Set(Setpoint, 600).Set(Chamber, 600).Minutes(10).Rang);
}
