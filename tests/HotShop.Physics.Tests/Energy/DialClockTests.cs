using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using Xunit;

namespace HotShop.Physics.Tests.Energy;

public class DialClockTests
{
    [Fact]
    public void One_slow_thumb_spoils_little_of_ten_turns()
    {
        double[] presses = [.. Enumerable.Range(0, 11).Select(i => 20.0 * i)];
        presses[4] += 0.5;
        var reading = DialClock.Read(0.01, presses);
        Assert.Equal(10, reading.Turns);
        Assert.Equal(1.8, reading.CubicMetresPerHour.Value, 0.005);
        Assert.InRange(1.8, reading.CubicMetresPerHour.Low95, reading.CubicMetresPerHour.High95);
        Assert.True(reading.SecondsPerTurn.RelativeUncertainty < 0.2 * DialClock.Read(0.01, [0, 20]).SecondsPerTurn.RelativeUncertainty);
    }

    // JCGM 100:2008 (GUM), H.3: the variance of a slope is that of a value over the sum of squared distances.
    [Fact]
    public void The_interval_of_two_presses_is_that_of_two_thumbs() =>
        Assert.Equal(DialClock.PressSeconds * Math.Sqrt(2), DialClock.Read(0.01, [3, 25]).SecondsPerTurn.StandardUncertainty, 1e-12);

    [Fact]
    public void Presses_with_a_thumb_s_error_find_the_flow_as_often_as_they_claim()
    {
        var chance = new Random(5);
        var inside = 0;
        for (var trial = 0; trial < 2000; trial++)
        {
            var presses = Enumerable.Range(0, 7).Select(i => 15.0 * i + DialClock.PressSeconds * Quantiles.Normal(0.0001 + 0.9998 * chance.NextDouble())).ToList();
            var flow = DialClock.Read(0.01, presses).CubicMetresPerHour;
            if (flow.Low95 <= 2.4 && 2.4 <= flow.High95) inside++;
        }
        Assert.InRange(inside / 2000.0, 0.935, 0.985);
    }

    [Fact]
    public void A_sensor_that_shows_too_little_has_a_factor_above_one() =>
        Assert.Equal(1.04, DialClock.Read(0.01, [0, 20, 40, 60]).MeterFactor(1.8 / 1.04).Value, 1e-9);

    [Fact]
    public void One_press_is_no_turn() => Assert.Throws<ArgumentException>(() => DialClock.Read(0.01, [0]));

    [Fact]
    public void Presses_that_go_back_are_refused_with_their_number() =>
        Assert.Contains("press 3", Assert.Throws<ArgumentException>(() => DialClock.Read(0.01, [0, 20, 15])).Message, StringComparison.Ordinal);
}
