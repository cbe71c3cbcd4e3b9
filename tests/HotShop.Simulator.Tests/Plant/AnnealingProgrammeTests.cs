using HotShop.Simulator.Plant;

namespace HotShop.Simulator.Tests.Plant;

public class AnnealingProgrammeTests
{
    // By hand: 1 + 46/60 + 149/80 + 150/40 + 70/18 h, and 2.5 + 46/12 + 50/24 + 249/30 + 70/15 h.
    [Fact]
    public void A_programme_lasts_as_long_as_its_stages()
    {
        Assert.Equal(11.268, AnnealingProgramme.Overnight.Hours, 0.001);
        Assert.Equal(21.383, AnnealingProgramme.OverTheWeekend.Hours, 0.001);
    }

    [Theory, InlineData(0.5, 495.0), InlineData(1.5, 465.0), InlineData(11.26, 80.15)]
    public void The_setpoint_holds_then_falls_at_its_rate(double hours, double celsius) =>
        Assert.Equal(celsius, AnnealingProgramme.Overnight.SetpointAfter(hours)!.Value, 0.01);

    [Theory, InlineData(-0.1), InlineData(11.27)]
    public void There_is_no_setpoint_before_the_start_or_after_the_end(double hours) => Assert.Null(AnnealingProgramme.Overnight.SetpointAfter(hours));
}
