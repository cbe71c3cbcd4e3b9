using HotShop.Monitor.Handover;
using HotShop.Monitor.Readings;
using HotShop.Physics.Annealing;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Handover;

/// <summary>The facts of a night that need no studio: arithmetic over rows.</summary>
public sealed class NightFactsTests
{
    static readonly Instant Ten = Instant.FromUtc(2026, 3, 3, 22, 0);

    static MinuteRow[] Minutes(int count, Func<int, double> celsius) => [.. Enumerable.Range(0, count).Select(i => new MinuteRow(Ten + Minutes(i), celsius(i), celsius(i), celsius(i), 6))];

    static Duration Minutes(int count) => Duration.FromMinutes(count);

    static HourRow Hour(int index, double min, double max, double covered = 3600) => new(Ten + Hours(index), 0, covered, 0, (min + max) / 2, min, max, 360, 0);

    // A fire that falls 1 K a minute under a set point that stands: after ten minutes 10 K, and beyond 15 K from the sixteenth minute on.
    [Fact]
    public void The_largest_deviation_from_the_set_point_is_told_with_its_time_and_how_long_it_was_wide()
    {
        var kept = Keeping.ToSetpoint(Minutes(31, i => 1150 - i), Minutes(31, _ => 1150), Minutes(3))!;
        Assert.Equal((-30, Ten + Minutes(30), Minutes(15), false), (kept.MostKelvin, kept.At, kept.Beyond, kept.IsClose));
    }

    [Fact]
    public void A_set_point_that_is_no_longer_sent_asks_for_nothing()
    {
        var kept = Keeping.ToSetpoint(Minutes(60, i => i < 20 ? 490 : 490 - 3 * (i - 20)), Minutes(20, _ => 495), Minutes(3))!;
        Assert.Equal(-11, kept.MostKelvin);   // it held for three minutes after its last, to 22, when the fall was at 484
        Assert.Null(Keeping.ToSetpoint(Minutes(60, _ => 60), [], Minutes(3)));
        Assert.Null(Keeping.ToSetpoint(Minutes(60, _ => 60), Minutes(60, _ => 30), Minutes(3)));
    }

    [Fact]
    public void A_curve_is_kept_when_the_chamber_follows_it()
    {
        var curve = new AnnealingCurve(Ten, 495, [new Stage.Hold(Hours(0.5)), new Stage.Ramp(465, 60)]);
        var kept = Keeping.ToCurve(Minutes(60, i => (i <= 30 ? 495 : 495 - (i - 30)) + 4), curve)!;
        Assert.Equal((4, true, true), (Math.Round(kept.MostKelvin, 6), kept.IsCurve, kept.IsClose));
    }

    [Fact]
    public void Hours_above_a_thousand_count_whole_hours_and_the_minutes_of_those_that_cross()
    {
        HourRow[] hours = [Hour(0, 1140, 1160), Hour(1, 900, 1150), Hour(2, 700, 900), Hour(3, 1100, 1100, covered: 1800)];
        var minutes = Minutes(60, i => i < 20 ? 1100 : 950);
        Assert.Equal(1 + 20 / 60.0 + 0.5, HotHours.Above(hours, h => h == Ten + Hours(1) ? minutes : [], 1000), 9);
    }

    [Fact]
    public void An_hour_whose_minutes_are_gone_counts_in_proportion() =>
        Assert.Equal(0.6, HotHours.Above([Hour(0, 900, 1150)], _ => [], 1000), 9);   // (1150 - 1000) / (1150 - 900)

    static NightGas Among(double kilowattHours, params double[] others) =>
        NightGas.Among(Ten, Ten + Hours(12), new Estimate(kilowattHours, 5), new Estimate(40, 0.5), 1, [.. others.Select(o => new Estimate(o, 5))]);

    [Fact]
    public void A_night_lies_among_others_of_its_kind_by_their_range_and_median()
    {
        var usual = Among(440, 430, 450, 445, 435, 460);
        Assert.Equal((GasVerdict.AsUsual, 445.0, 430.0, 460.0, 5), (usual.Verdict, usual.MedianKilowattHours!.Value.Value, usual.LeastKilowattHours!.Value.Value, usual.MostKilowattHours!.Value.Value, usual.Nights));
        // Of an even number the middle of both, by one meter: no better known than either.
        Assert.Equal(new Estimate(440, 5), Among(440, 430, 450, 445, 435).MedianKilowattHours);
        Assert.Equal(GasVerdict.More, Among(461, 430, 450, 445, 460).Verdict);
        Assert.Equal(GasVerdict.Less, Among(429, 430, 450, 445, 460).Verdict);
    }

    [Fact]
    public void Of_too_few_nights_nothing_is_called_normal() =>
        Assert.Equal((GasVerdict.TooFewNights, 3, null), (Among(440, 430, 450, 445).Verdict, Among(440, 430, 450, 445).Nights, Among(440, 430, 450, 445).MedianKilowattHours));
}
