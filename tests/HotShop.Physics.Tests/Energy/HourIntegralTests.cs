using FsCheck.Xunit;
using HotShop.Physics.Energy;
using NodaTime;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Energy;

public class HourIntegralTests
{
    static readonly Duration FiveMinutes = Duration.FromMinutes(5);

    [Fact]
    public void A_steady_flow_for_an_hour_is_its_volume()
    {
        var total = HourIntegral.Of(At(0), At(60), Every(0.5, -1, 61, _ => 2.0), Course.Linear, FiveMinutes);
        Assert.Equal(2.0, total.IntegralHours, 1e-12);
        Assert.Equal(3600, total.CoveredSeconds);
        Assert.Equal(120, total.Count);
        Assert.Equal(2.0, total.TimeWeightedMean!.Value, 1e-12);
    }

    [Fact]
    public void A_segment_across_the_edge_is_cut_on_its_straight_line()
    {
        // From 0 at -4 min to 8 at +4 min: 4 at noon, so (4 + 8)/2 over 4 min inside.
        var total = HourIntegral.Of(At(0), At(60), Samples((-4, 0), (4, 8)), Course.Linear, Duration.FromMinutes(10));
        Assert.Equal(6.0 * 4 / 60, total.IntegralHours, 1e-12);
        Assert.Equal(240, total.CoveredSeconds);
        Assert.Equal((4.0, 8.0), (total.Min!.Value, total.Max!.Value));
    }

    [Fact]
    public void Half_an_hour_without_readings_is_unmeasured_not_free()
    {
        var samples = Every(0.5, 0, 30, _ => 2.0).Concat(Every(0.5, 60, 120, _ => 2.0)).ToArray();
        var total = HourIntegral.Of(At(0), At(120), samples, Course.Linear, FiveMinutes);
        Assert.Equal(0.75, total.CoveredSeconds / 7200, 1e-12);
        Assert.Equal(3.0, total.IntegralHours, 1e-12);
    }

    [Fact]
    public void A_relay_holds_its_state_until_it_changes()
    {
        var total = HourIntegral.Of(At(0), At(60), Samples((-10, 1), (15, 0), (45, 1)), Course.Held, Duration.FromHours(1));
        Assert.Equal(0.5, total.IntegralHours, 1e-12);
        Assert.Equal(3600, total.CoveredSeconds);
    }

    [Fact]
    public void A_relay_that_fell_silent_holds_no_longer_than_the_longest_gap()
    {
        var total = HourIntegral.Of(At(0), At(60), Samples((10, 1)), Course.Held, FiveMinutes);
        Assert.Equal(300, total.CoveredSeconds);
        Assert.Equal(5.0 / 60, total.IntegralHours, 1e-12);
    }

    [Fact]
    public void An_hour_without_samples_covers_nothing_and_has_no_mean()
    {
        var total = HourIntegral.Of(At(0), At(60), [], Course.Linear, FiveMinutes);
        Assert.Equal(HourTotal.Nothing, total);
        Assert.Null(total.TimeWeightedMean);
    }

    [Fact]
    public void A_lone_sample_is_counted_and_covers_nothing()
    {
        var total = HourIntegral.Of(At(0), At(60), Samples((30, 7)), Course.Linear, FiveMinutes);
        Assert.Equal((1, 0.0, 7.0), (total.Count, total.CoveredSeconds, total.Max!.Value));
    }

    [Fact]
    public void A_repeated_time_adds_nothing() =>
        Assert.Equal(
            HourIntegral.Of(At(0), At(60), Samples((0, 1), (2, 1), (4, 1)), Course.Linear, FiveMinutes).IntegralHours,
            HourIntegral.Of(At(0), At(60), Samples((0, 1), (2, 1), (2, 1), (4, 1)), Course.Linear, FiveMinutes).IntegralHours, 1e-15);

    [Fact]
    public void Samples_out_of_order_are_refused_with_their_place()
    {
        var mistake = Assert.Throws<ArgumentException>(() => HourIntegral.Of(At(0), At(60), Samples((2, 1), (1, 1)), Course.Linear, FiveMinutes));
        Assert.Contains("sample 1", mistake.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_is_no_number_is_refused() =>
        Assert.Throws<ArgumentException>(() => HourIntegral.Of(At(0), At(60), Samples((2, double.NaN)), Course.Held, FiveMinutes));

    [Property]
    public bool Cutting_an_hour_in_two_changes_nothing(int seed, bool held)
    {
        var random = new Random(seed);
        var samples = Irregular(random);
        var course = held ? Course.Held : Course.Linear;
        var cut = At(random.Next(1, 3600) / 60.0);
        var whole = HourIntegral.Of(At(0), At(60), samples, course, FiveMinutes);
        var parts = HourIntegral.Of(At(0), cut, samples, course, FiveMinutes) + HourIntegral.Of(cut, At(60), samples, course, FiveMinutes);
        return Math.Abs(whole.IntegralHours - parts.IntegralHours) < 1e-9
            && Math.Abs(whole.CoveredSeconds - parts.CoveredSeconds) < 1e-6
            && whole.Count == parts.Count
            && Same(whole.Min, parts.Min, held) && Same(whole.Max, parts.Max, held);
    }

    [Property]
    public bool The_same_samples_give_the_same_bits_whatever_other_neighbours_come_along(int seed)
    {
        var samples = Irregular(new Random(seed));
        // Neighbours further away than the one next to the edge must not matter.
        var first = Array.FindLastIndex(samples, s => s.At <= At(0));
        var last = Array.FindIndex(samples, s => s.At >= At(60));
        var near = samples[first..(last + 1)];
        return HourIntegral.Of(At(0), At(60), samples, Course.Linear, FiveMinutes) == HourIntegral.Of(At(0), At(60), near, Course.Linear, FiveMinutes);
    }

    [Property]
    public bool Nobody_measures_more_than_the_whole_hour(int seed, bool held) =>
        HourIntegral.Of(At(0), At(60), Irregular(new Random(seed)), held ? Course.Held : Course.Linear, FiveMinutes).CoveredSeconds is >= 0 and <= 3600;

    static bool Same(double? a, double? b, bool held) =>
        // A straight line cut in two has its extremes at the same ends; where nothing is covered both are absent.
        a is null ? b is null : b is not null && Math.Abs(a.Value - b.Value) < (held ? 1e-12 : 1e-9);

    static Sample[] Irregular(Random random)
    {
        var samples = new List<Sample>();
        for (var second = -900.0; second < 4500; second += random.NextDouble() < 0.05 ? 600 * random.NextDouble() : 1 + 40 * random.NextDouble())
            samples.Add(new(At(Math.Round(second, 3) / 60), 10 * random.NextDouble()));
        return [.. samples];
    }
}
