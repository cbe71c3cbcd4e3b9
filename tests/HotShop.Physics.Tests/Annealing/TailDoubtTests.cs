using HotShop.Physics.Annealing;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Annealing;

/// <summary>What makes a tail, and how far to trust it, worked apart from the library.</summary>
public class TailDoubtTests
{
    static readonly Estimate Room = Estimate.Exact(22);

    static Sample[] Cooling(int count, double minutes) => [.. Enumerable.Range(0, count).Select(i => new Sample(At(i * minutes), 22 + 58 * Math.Exp(-i * minutes / 90)))];

    [Fact]
    public void A_tail_has_eight_samples()
    {
        Assert.Null(CoolingTail.Fit(Cooling(7, 5), Room));
        Assert.NotNull(CoolingTail.Fit(Cooling(8, 5), Room));
    }

    [Theory, InlineData(3.99, false), InlineData(4.01, true)]
    public void A_tail_falls_by_four_kelvin(double fall, bool isTail) =>
        Assert.Equal(isTail, CoolingTail.Fit(Cooling(10, -90 * Math.Log(1 - fall / 58) / 9), Room) is not null);

    [Theory, InlineData(22.499, false), InlineData(22.501, true)]
    public void Within_half_a_kelvin_of_the_room_there_is_no_saying_when(double celsius, bool isKnown) =>
        Assert.Equal(isKnown, CoolingTail.Fit(Cooling(45, 1), Room)!.HoursTo(celsius) is not null);

    [Fact]
    public void A_room_a_kelvin_of_doubt_warmer_decides_when_it_is_half_a_kelvin_away()
    {
        var tail = CoolingTail.Fit(Cooling(45, 1), new Estimate(22, 1))!;
        Assert.Equal((false, true), (tail.HoursTo(23.499) is not null, tail.HoursTo(23.501) is not null));
    }

    [Fact]
    public void The_room_s_doubt_is_half_of_what_a_warmer_and_a_cooler_room_differ_by()
    {
        Estimate Hours(Estimate room) => CoolingTail.Fit(Cooling(45, 1), room)!.HoursTo(40)!.Value;
        var room = (Hours(Estimate.Exact(23)).Value - Hours(Estimate.Exact(21)).Value) / 2;
        Assert.Equal(double.Hypot(Hours(Room).StandardUncertainty, room), Hours(new Estimate(22, 1)).StandardUncertainty, 1e-9);
    }

    // A wall of layers: two exponentials, of which the fit leaves a smooth rest. Its neighbours resemble each other by more than 0.97, so the variance is that of the least squares
    // (residual variance times the inverse of the normal equations) times (1 + 0.97)/(1 − 0.97), and no more.
    [Fact]
    public void A_rest_that_hangs_together_widens_the_doubt_up_to_a_bound()
    {
        var samples = Enumerable.Range(0, 600).Select(i => new Sample(At(i * 0.2), 22 + 40 * Math.Exp(-i * 0.2 / 120) + 18 * Math.Exp(-i * 0.2 / 30))).ToArray();
        var tail = CoolingTail.Fit(samples, Room)!;
        var rate = 1 / tail.TimeConstantHours.Value;
        double ff = 0, tff = 0, ttff = 0, rest = 0;
        foreach (var sample in samples)
        {
            var (hours, excess) = ((sample.At - samples[0].At).TotalHours, tail.CelsiusAt(sample.At) - 22);
            (ff, tff, ttff, rest) = (ff + excess * excess, tff + hours * excess * excess, ttff + hours * hours * excess * excess, rest + Math.Pow(sample.Value - 22 - excess, 2));
        }
        Assert.Equal(Math.Sqrt(rest / 600), tail.ResidualKelvin, 1e-9);
        var variance = rest / 598 * ff / (ff * ttff - tff * tff) * (1.97 / 0.03);
        Assert.Equal(Math.Sqrt(variance) / rate / rate, tail.TimeConstantHours.StandardUncertainty, 1e-6 * tail.TimeConstantHours.StandardUncertainty);
    }
}
