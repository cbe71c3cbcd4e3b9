using HotShop.Physics.Annealing;
using HotShop.Physics.Glass;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Annealing;

public class CurveInGlassTests
{
    static readonly GlassProfile Glass = GlassProfile.SoftStudioSodaLime;   // annealing point 495.2, strain point 469.3 °C

    static CurveInGlass Of(double start, params Stage[] stages) => CurveInGlass.Of(new AnnealingCurve(Some.Noon, start, stages), Glass);

    [Fact]
    public void Time_above_the_strain_point_counts_ramps_in_both_directions()
    {
        var (strain, fit) = (Glass.StrainPointCelsius, Of(20, new Stage.Ramp(500, 100), new Stage.Hold(Duration.FromHours(1)), new Stage.Ramp(20, 10)));
        Assert.Equal((500 - strain) / 100 + 1 + (500 - strain) / 10, fit.AboveStrainPoint.TotalHours, 1e-6);
        Assert.Equal(500, fit.HighestCelsius);
    }

    [Fact]
    public void The_rate_that_counts_is_the_one_between_the_two_points()
    {
        // Fast above the annealing point and fast below the strain point; 12 K/h where stress is made.
        var fit = Of(550, new Stage.Ramp(496, 300), new Stage.Ramp(469, 12), new Stage.Ramp(20, 200));
        Assert.Equal(12, fit.FastestCoolingKelvinPerHour, 1e-9);
        Assert.Equal(200, Of(550, new Stage.Ramp(470, 12), new Stage.Ramp(20, 200)).FastestCoolingKelvinPerHour, 1e-6);
    }

    [Fact]
    public void A_curve_below_the_strain_point_has_no_time_and_no_rate()
    {
        var fit = Of(460, new Stage.Hold(Duration.FromHours(3)), new Stage.Ramp(20, 50));
        Assert.Equal((Duration.Zero, 0.0), (fit.AboveStrainPoint, fit.FastestCoolingKelvinPerHour));
    }

    [Fact]
    public void Corners_are_where_the_stages_end() => Assert.Equal(
        [new CurveCorner(Some.Noon, 500), new CurveCorner(Some.At(60), 500), new CurveCorner(Some.At(120), 400)],
        new AnnealingCurve(Some.Noon, 500, [new Stage.Hold(Duration.FromHours(1)), new Stage.Ramp(400, 100)]).Corners);
}
