using HotShop.Physics.Annealing;
using HotShop.Physics.Statistics;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Annealing;

/// <summary>Newton's law of cooling in its closed form: T = T_room + (T_0 − T_room)·exp(−t/τ), and t = τ·ln((T_0 − T_room)/(T − T_room)).</summary>
public class CoolingTailTests
{
    static readonly Estimate Room = Estimate.Exact(22);

    /// <summary>80 °C at noon, 22 °C around it, time constant an hour and a half: minute by minute.</summary>
    static Physics.Energy.Sample[] Cooling(double minutes, double noiseKelvin = 0, int seed = 1)
    {
        var chance = new Random(seed);
        return Every(1, 0, minutes, m => 22 + 58 * Math.Exp(-m / 90) + noiseKelvin * (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5) * 2);
    }

    // A cup at 90 °C in air of 20 °C that is 60 °C after ten minutes is 45 °C when: k = ln(70/40)/10, t = ln(70/25)/k = 18.4 min. A school book's exercise, arithmetic by hand.
    [Fact]
    public void The_closed_form_gives_the_time_between_two_temperatures()
    {
        var constant = CoolingTail.TimeConstant(90, 60, 20, 10 / 60.0)!.Value;
        Assert.Equal(10 / Math.Log(7.0 / 4) / 60, constant, 1e-12);
        Assert.Equal(18.4, CoolingTail.Hours(90, 45, 20, constant)!.Value * 60, 0.05);
    }

    [Fact]
    public void After_one_time_constant_the_excess_is_down_to_one_part_in_e() =>
        Assert.Equal(1.5, CoolingTail.Hours(22 + Math.E, 23, 22, 1.5)!.Value, 1e-12);

    [Fact]
    public void A_fit_through_points_of_the_law_finds_its_time_constant_and_the_moment_of_50_degrees()
    {
        var tail = CoolingTail.Fit(Cooling(45), Room)!;
        Assert.Equal(1.5, tail.TimeConstantHours.Value, 1e-6);
        Assert.Equal(1.5 * Math.Log(58.0 / 28), tail.HoursTo(50)!.Value.Value, 1e-6);
        Assert.Equal(0, tail.ResidualKelvin, 1e-6);
        Assert.Equal(50, tail.CelsiusAt(tail.From + NodaTime.Duration.FromHours(tail.HoursTo(50)!.Value.Value)), 1e-6);
    }

    [Fact]
    public void Noise_of_the_sensor_is_in_the_interval_that_the_fit_gives()
    {
        var truth = 1.5 * Math.Log(58.0 / 28);
        var inside = Enumerable.Range(1, 400).Select(seed => CoolingTail.Fit(Cooling(40, noiseKelvin: 0.4, seed), Room)!.HoursTo(50)!.Value).Count(t => truth >= t.Low95 && truth <= t.High95);
        // 95 % of 400 is 380; fewer than 366 comes by chance once in a thousand times (binomial).
        Assert.InRange(inside, 366, 400);
    }

    [Fact]
    public void A_room_that_is_not_known_well_widens_the_interval()
    {
        var known = CoolingTail.Fit(Cooling(30), Room)!.HoursTo(50)!.Value;
        var unknown = CoolingTail.Fit(Cooling(30), new Estimate(22, 4))!.HoursTo(50)!.Value;
        Assert.Equal(known.Value, unknown.Value, 1e-9);
        Assert.True(unknown.StandardUncertainty > known.StandardUncertainty + 0.02, $"{unknown.StandardUncertainty} h beside {known.StandardUncertainty} h");
    }

    [Fact]
    public void A_longer_tail_tells_more()
    {
        var (brief, full) = (CoolingTail.Fit(Cooling(20, 0.4), Room)!, CoolingTail.Fit(Cooling(60, 0.4), Room)!);
        Assert.True(full.HoursTo(50)!.Value.StandardUncertainty < brief.HoursTo(50)!.Value.StandardUncertainty / 2);
    }

    [Fact]
    public void What_does_not_cool_has_no_tail()
    {
        Assert.Null(CoolingTail.Fit(Every(1, 0, 60, _ => 480), Room));
        Assert.Null(CoolingTail.Fit(Every(1, 0, 60, m => 60 + m), Room));
        Assert.Null(CoolingTail.Fit(Cooling(5), Room));
        Assert.Null(CoolingTail.Fit(Every(1, 0, 60, m => 22.5 - m / 1000), Room));
    }

    [Fact]
    public void A_chamber_never_gets_colder_than_the_room()
    {
        Assert.Null(CoolingTail.Fit(Cooling(45), Room)!.HoursTo(22));
        Assert.Null(CoolingTail.Hours(80, 20, 22, 1.5));
        Assert.Equal(0, CoolingTail.Hours(45, 50, 22, 1.5));
    }
}
