using FsCheck.Xunit;
using HotShop.Physics.Annealing;
using NodaTime;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Annealing;

public class AnnealingCurveTests
{
    // Hold 2 h at 495, down to 425 at 20 K/h (3.5 h), down to 50 at 75 K/h (5 h): 10.5 h.
    static readonly AnnealingCurve Curve = new(At(0), 495, [new Stage.Hold(Duration.FromHours(2)), new Stage.Ramp(425, 20), new Stage.Ramp(50, 75)]);

    [Theory, InlineData(0, 495), InlineData(120, 495), InlineData(180, 475), InlineData(330, 425), InlineData(390, 350), InlineData(630, 50)]
    public void The_intended_temperature_follows_the_stages(double minutes, double celsius) =>
        Assert.Equal(celsius, Curve.SetpointCelsius(At(minutes))!.Value, 1e-9);

    [Fact]
    public void The_end_is_the_sum_of_its_stages()
    {
        Assert.Equal(At(630), Curve.EndsAt);
        Assert.Equal(50, Curve.EndCelsius);
    }

    [Theory, InlineData(-1), InlineData(631)]
    public void Before_its_start_and_after_its_end_a_curve_wants_nothing(double minutes)
    {
        Assert.Null(Curve.SetpointCelsius(At(minutes)));
        Assert.Null(Curve.DeviationCelsius(At(minutes), 400));
        Assert.Null(Curve.StageAt(At(minutes)));
    }

    [Fact]
    public void An_oven_20_degrees_too_hot_deviates_by_20() => Assert.Equal(20, Curve.DeviationCelsius(At(180), 495)!.Value, 1e-9);

    [Property]
    public bool A_curve_does_not_deviate_from_itself(ushort share)
    {
        var at = At(630.0 * share / ushort.MaxValue);
        return Curve.DeviationCelsius(at, Curve.SetpointCelsius(at)!.Value) == 0;
    }

    [Theory, InlineData(0, 0), InlineData(119, 0), InlineData(121, 1), InlineData(331, 2), InlineData(630, 2)]
    public void The_stage_under_way_is_known(double minutes, int stage) => Assert.Equal(stage, Curve.StageAt(At(minutes)));

    [Fact]
    public void A_ramp_to_where_it_already_is_takes_no_time() =>
        Assert.Equal(At(60), new AnnealingCurve(At(0), 495, [new Stage.Ramp(495, 20), new Stage.Hold(Duration.FromHours(1))]).EndsAt);

    [Fact]
    public void A_heat_up_goes_upwards() =>
        Assert.Equal(120, new AnnealingCurve(At(0), 20, [new Stage.Ramp(495, 100)]).SetpointCelsius(At(60))!.Value, 1e-9);

    [Theory, InlineData(0), InlineData(-20), InlineData(double.NaN)]
    public void A_rate_that_never_arrives_is_refused(double kelvinPerHour) => Assert.Throws<ArgumentOutOfRangeException>(() => new Stage.Ramp(400, kelvinPerHour));

    [Fact]
    public void A_curve_without_stages_is_a_moment() => Assert.Equal((495.0, At(0)), (new AnnealingCurve(At(0), 495, []).SetpointCelsius(At(0)), new AnnealingCurve(At(0), 495, []).EndsAt));
}
