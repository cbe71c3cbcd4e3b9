using FsCheck.Xunit;
using HotShop.Physics.Energy;
using NodaTime;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Energy;

public class CumulativeMeterTests
{
    static readonly MeterTraits FiveDigits = new(Digits: 5, MaximumPerHour: 10, LongestGap: Duration.FromMinutes(5));
    static readonly MeterTraits Unknown = new(Digits: null, MaximumPerHour: null, LongestGap: Duration.FromMinutes(5));

    static MeterTotal Hour(params (double, double)[] points) => CumulativeMeter.Between(At(0), At(60), Samples(points), FiveDigits);

    [Fact]
    public void An_hour_between_two_readings_is_their_difference()
    {
        var total = Hour((0, 100), (20, 101), (40, 101.5), (60, 102));
        Assert.Equal(2.0, total.Amount, 1e-12);
        Assert.Equal(3600, total.CoveredSeconds);
        Assert.Empty(total.Resets);
    }

    [Fact]
    public void A_reading_across_the_edge_gives_its_share_of_time() => Assert.Equal(0.5, Hour((-30, 100), (30, 101), (31, 101)).Amount, 1e-12);

    [Fact]
    public void A_long_gap_still_knows_its_volume_and_says_that_it_was_a_gap()
    {
        var total = Hour((-120, 100), (0, 104), (45, 106), (46, 106), (60, 106));
        Assert.Equal(2.0, total.Amount, 1e-12);
        Assert.Equal(3600, total.CoveredSeconds);
        Assert.Equal((45 + 14) * 60, total.GapSeconds);
    }

    [Fact]
    public void A_dip_that_returns_adds_nothing()
    {
        var total = Hour((0, 100), (10, 101), (11, 0), (12, 101.2), (60, 102));
        Assert.Equal(2.0, total.Amount, 1e-12);
        Assert.Equal(1, total.GlitchesDropped);
        Assert.Empty(total.Resets);
    }

    [Fact]
    public void A_spike_that_returns_adds_nothing()
    {
        var total = Hour((0, 100), (10, 101), (11, 65535), (12, 101.2), (60, 102));
        Assert.Equal(2.0, total.Amount, 1e-12);
        Assert.Equal(1, total.GlitchesDropped);
    }

    [Fact]
    public void Two_readings_in_a_row_that_dip_and_return_add_nothing_even_when_the_meters_size_is_unknown()
    {
        var total = CumulativeMeter.Between(At(0), At(60), Samples((0, 100), (10, 101), (11, 0), (12, 0), (13, 101.2), (60, 102)), Unknown);
        Assert.Equal(2.0, total.Amount, 1e-12);
        Assert.Equal(2, total.GlitchesDropped);
        Assert.Empty(total.Resets);
    }

    [Fact]
    public void Five_digits_roll_over_at_a_hundred_thousand()
    {
        var total = Hour((0, 99_998.5), (30, 99_999.5), (60, 0.5), (61, 0.5));
        Assert.Equal(2.0, total.Amount, 1e-9);
        Assert.Equal(3600, total.CoveredSeconds);
        Assert.Empty(total.Resets);
    }

    [Fact]
    public void A_rollover_while_nobody_read_is_still_a_rollover() =>
        Assert.Equal(5.0, CumulativeMeter.Between(At(-60), At(60), Samples((-60, 99_997), (60, 2), (61, 2)), FiveDigits).Amount, 1e-9);

    [Fact]
    public void A_reset_loses_one_interval_and_says_so()
    {
        var total = Hour((0, 500), (20, 501), (30, 0), (40, 0.5), (60, 1.5));
        Assert.Equal(1.0 + 1.5, total.Amount, 1e-12);
        Assert.Equal(3000, total.CoveredSeconds);
        Assert.Equal(new MeterReset(At(20), At(30), 501, 0), Assert.Single(total.Resets));
    }

    [Fact]
    public void A_new_meter_with_a_higher_register_is_no_consumption()
    {
        var total = Hour((0, 500), (20, 501), (30, 70_000), (40, 70_000.5), (60, 70_001.5));
        Assert.Equal(1.0 + 1.5, total.Amount, 1e-12);
        Assert.Equal(70_000, Assert.Single(total.Resets).Reading);
    }

    [Fact]
    public void A_step_back_of_the_newest_reading_is_left_open_until_two_more_settle_it()
    {
        var open = Hour((0, 500), (20, 501), (30, 0));
        Assert.Equal((1.0, 1200.0), (open.Amount, open.CoveredSeconds));
        Assert.Empty(open.Resets);
        Assert.Equal(1, Hour((0, 500), (20, 501), (30, 0), (31, 501.2)).GlitchesDropped);
        Assert.Empty(Hour((0, 500), (20, 501), (30, 0), (31, 0.1)).Resets);
        Assert.Single(Hour((0, 500), (20, 501), (30, 0), (31, 0.1), (32, 0.2)).Resets);
    }

    [Fact]
    public void One_pulse_right_after_the_other_is_no_impossible_flow() =>
        Assert.Equal(0.02, Hour((0, 100), (30, 100.01), (30.001, 100.02), (60, 100.02)).Amount, 1e-9);

    [Fact]
    public void Without_a_known_maximum_only_top_to_bottom_is_a_rollover()
    {
        var traits = Unknown with { };
        var fiveDigits = new MeterTraits(5, null, traits.LongestGap);
        Assert.Equal(2.0, CumulativeMeter.Between(At(0), At(60), Samples((0, 99_999), (59, 1), (60, 1)), fiveDigits).Amount, 1e-9);
        Assert.Single(CumulativeMeter.Between(At(0), At(60), Samples((0, 45_000), (58, 1), (59, 1), (60, 1)), fiveDigits).Resets);
        Assert.Single(CumulativeMeter.Between(At(0), At(60), Samples((0, 99_999), (58, 1), (59, 1), (60, 1)), traits).Resets);
    }

    [Property]
    public bool Hour_by_hour_is_the_same_as_the_whole_day(int seed)
    {
        var samples = Running(new Random(seed), withFaults: true);
        var day = CumulativeMeter.Between(At(0), At(1440), samples, FiveDigits);
        var hours = Enumerable.Range(0, 24).Select(h => CumulativeMeter.Between(At(60 * h), At(60 * h + 60), Neighbourhood(samples, h), FiveDigits)).ToArray();
        return Math.Abs(day.Amount - hours.Sum(h => h.Amount)) < 1e-6
            && Math.Abs(day.CoveredSeconds - hours.Sum(h => h.CoveredSeconds)) < 1e-3
            && day.Resets.Count == hours.Sum(h => h.Resets.Count)
            && day.GlitchesDropped == hours.Sum(h => h.GlitchesDropped);
    }

    [Property]
    public bool A_meter_without_faults_counts_last_minus_first(int seed)
    {
        var samples = Running(new Random(seed), withFaults: false);
        var total = CumulativeMeter.Between(samples[0].At, samples[^1].At, samples, FiveDigits);
        var difference = samples[^1].Value - samples[0].Value;
        return Math.Abs(total.Amount - (difference < 0 ? difference + 100_000 : difference)) < 1e-6;
    }

    /// <summary>An hour's readings with three neighbours on each side, as the store hands them over.</summary>
    static Sample[] Neighbourhood(Sample[] all, int hour)
    {
        var first = Math.Max(0, Array.FindIndex(all, s => s.At >= At(60 * hour)) is var i and >= 0 ? i - 3 : all.Length - 3);
        var end = Array.FindLastIndex(all, s => s.At < At(60 * hour + 60)) + 4;
        return all[first..Math.Min(all.Length, Math.Max(first, end))];
    }

    /// <summary>A counter near its rollover, read irregularly; with faults now and then a dip or a spike of one or two readings, or a reset.</summary>
    static Sample[] Running(Random random, bool withFaults)
    {
        var samples = new List<Sample>();
        var counter = 99_990.0;
        var (calm, fault, faultFor) = (3, 0, 0);
        for (var minute = -20.0; minute < 1470; minute += 0.5 + 8 * random.NextDouble())
        {
            counter = (counter + 0.5 * random.NextDouble() * 0.1) % 100_000;
            var value = Math.Round(counter, 3);
            if (withFaults && calm-- < 0 && random.NextDouble() < 0.1)
            {
                calm = 6;
                fault = random.Next(3);
                faultFor = random.Next(1, 3);
                if (fault == 2) counter = value = 1;
            }
            if (faultFor-- > 0) value = fault switch { 0 => 0, 1 => value + 500, _ => value };
            samples.Add(new(At(minute), value));
        }
        return [.. samples];
    }
}
