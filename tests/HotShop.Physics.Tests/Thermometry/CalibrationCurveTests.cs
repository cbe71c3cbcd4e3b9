using FsCheck.Xunit;
using HotShop.Physics.Thermometry;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class CalibrationCurveTests
{
    static readonly CalibrationCurve Curve = new([new(1200, -4), new(1000, -1), new(1100, -2.5)]);

    [Theory]
    [InlineData(1000, -1, false), InlineData(1050, -1.75, false), InlineData(1100, -2.5, false), InlineData(1150, -3.25, false), InlineData(1200, -4, false)]
    [InlineData(999.9, -1, true), InlineData(20, -1, true), InlineData(1200.1, -4, true)]
    public void Corrections_run_straight_between_points_and_are_held_outside(double reading, double correction, bool isHeld)
    {
        var found = Curve.At(reading);
        Assert.Equal(correction, found.Celsius, 1e-12);
        Assert.Equal(isHeld, found.IsHeld);
    }

    [Fact]
    public void One_point_is_a_correction_everywhere_and_measured_there_alone()
    {
        var one = new CalibrationCurve([new(1100, -2.5)]);
        Assert.Equal(new Correction(-2.5, false), one.At(1100));
        Assert.Equal(new Correction(-2.5, true), one.At(1099));
        Assert.Equal(new Correction(-2.5, true), one.At(1101));
    }

    // However points lie, a little more reading changes the correction little: never by more than the steepest line does.
    [Property]
    public void A_curve_has_no_step(short[] readings, sbyte[] corrections, double where)
    {
        if (!double.IsFinite(where)) return;
        var points = readings.Zip(corrections, (r, c) => (Reading: Math.Abs((double)r), Correction: (double)c)).DistinctBy(p => p.Reading).OrderBy(p => p.Reading).ToArray();
        if (points.Length == 0) return;
        var curve = new CalibrationCurve(points.Select(p => new CalibrationPoint(p.Reading, p.Correction)));
        var steepest = points.Zip(points.Skip(1), (a, b) => Math.Abs((b.Correction - a.Correction) / (b.Reading - a.Reading))).DefaultIfEmpty(0).Max();
        foreach (var near in points.Select(p => p.Reading).Append(Math.Abs(where) % 2000))
            Assert.True(Math.Abs(curve.At(near + 1e-6).Celsius - curve.At(near - 1e-6).Celsius) <= steepest * 2e-6 + 1e-9);
    }

    [Fact]
    public void A_calibration_holds_from_its_moment_until_the_next()
    {
        Instant first = Instant.FromUtc(2026, 3, 1, 0, 0), second = Instant.FromUtc(2026, 9, 1, 0, 0);
        var history = new CalibrationHistory([new(second, new([new(1100, 3)]), null, "Ana"), new(first, new([new(1100, -2.5)]), 0.6, null)]);
        Assert.Equal(1100, history.Corrected(1100, first - Duration.Epsilon));
        Assert.Null(history.At(first - Duration.Epsilon));
        Assert.Equal(1097.5, history.Corrected(1100, first));
        Assert.Equal(1097.5, history.Corrected(1100, second - Duration.Epsilon));
        Assert.Equal(1103, history.Corrected(1100, second));
        Assert.Equal("Ana", history.At(second)!.By);
        Assert.Equal([first, second], history.All.Select(c => c.From));
        Assert.Equal(1100, CalibrationHistory.None.Corrected(1100, second));
    }

    [Fact]
    public void What_cannot_be_a_calibration_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new CalibrationCurve([]));
        Assert.Throws<ArgumentException>(() => new CalibrationCurve([new(1100, 1), new(1100, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationPoint(1100, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationPoint(-300, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Curve.At(double.NaN));
        Instant from = Instant.FromUtc(2026, 3, 1, 0, 0);
        Assert.Throws<ArgumentException>(() => new CalibrationHistory([new(from, Curve, null, null), new(from, Curve, null, null)]));
    }
}
