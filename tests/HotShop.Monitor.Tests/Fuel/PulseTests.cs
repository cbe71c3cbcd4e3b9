using HotShop.Monitor.Fuel;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Fuel;

/// <summary>A meter's pulse output, counted by a small device and sent as a running count.</summary>
public sealed class PulseTests
{
    static readonly Instant Eight = OpenStudio.Start;

    const double BaseFactor = 103_425 / 101_325.0;

    static readonly HotShop.Monitor.Configuration.StudioConfiguration Pulses = SomeStudio.With("shop", "meter", c => c with { Unit = "{pulse}", CubicMetresPerPulse = 0.01, CounterDigits = null, CounterMaximumPerHour = 20 });

    static async Task Count(OpenStudio studio, IEnumerable<(Instant At, long Pulses)> counts)
    {
        foreach (var (at, pulses) in counts)
        {
            await studio.Send("shop/meter", OpenStudio.Timed(pulses, at), arrived: at);
            if (at > studio.Now) studio.Now = at;
        }
    }

    // At 0.01 m³ a pulse and 2 m³/h a pulse comes every 18 s.
    [Fact]
    public async Task A_pulse_every_18_seconds_is_two_cubic_metres_an_hour()
    {
        await using var studio = OpenStudio.Open(Pulses);
        await Count(studio, Every(Seconds(18), Eight, Eight + Hours(1)).Select((at, i) => (at, 500L + i)));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        Assert.Equal(2 * BaseFactor, use.BaseCubicMetres, 9);
        Assert.Equal((1.0, 0), (use.MeasuredShare, use.Resets));
    }

    [Fact]
    public async Task A_device_that_starts_again_at_nought_loses_one_interval_and_says_so()
    {
        await using var studio = OpenStudio.Open(Pulses);
        await Count(studio, Every(Seconds(18), Eight, Eight + Hours(1)).Select((at, i) => (at, i <= 100 ? 500L + i : i - 101)));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        Assert.Equal(1, use.Resets);
        Assert.Equal(1.99 * BaseFactor, use.BaseCubicMetres, 9);
    }

    // A reed contact bounces: without a filter in the device one closing counts as many. More than the meter can pass in the time is not believed.
    [Fact]
    public async Task A_bouncing_contact_that_counts_more_than_can_pass_is_not_believed()
    {
        await using var studio = OpenStudio.Open(Pulses);
        await Count(studio, Every(Seconds(18), Eight, Eight + Hours(1)).Select((at, i) => (at, 500L + i + (i >= 100 ? 400 : 0))));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        // 400 pulses too many in 18 s are 800 m³/h; the meter passes 20 at most: one interval is lost, and counted as a reset.
        Assert.Equal(1, use.Resets);
        Assert.Equal(1.99 * BaseFactor, use.BaseCubicMetres, 9);
        Assert.True(use.MeasuredShare < 1);
    }

    [Fact]
    public async Task The_same_count_sent_again_adds_nothing()
    {
        await using var studio = OpenStudio.Open(Pulses);
        var counts = Every(Seconds(18), Eight, Eight + Hours(1)).Select((at, i) => (at, 500L + i)).ToList();
        await Count(studio, counts);
        await Count(studio, counts);
        Assert.Equal(2 * BaseFactor, studio.Fuel("shop", Eight, Eight + Hours(1)).BaseCubicMetres, 9);
    }

    // At 0.01 m³ a pulse, two days of 4,800 pulses each are 96 m³ on the register.
    [Theory]
    [InlineData(1.00, false, "It sent as much as its register counted")]
    [InlineData(0.90, true, "It sent 10.0 % less than its register counted")]
    [InlineData(1.20, true, "It sent 20.0 % more than its register counted")]
    public async Task A_count_that_strays_from_the_register_is_told_with_what_to_look_for(double countedShare, bool isBeyond, string words)
    {
        await using var studio = OpenStudio.Open(Pulses);
        await Read(studio, "4712.00");
        await Count(studio, Every(Minutes(15), Eight, Eight + Hours(48)).Select((at, i) => (at, (long)Math.Round(50 * i * countedShare))));
        await Read(studio, "4808.00");
        await studio.Move();
        var meter = studio.The<MeterAnswers>().All(studio.Now).Single(m => m.Id.EndsWith("shop/meter", StringComparison.Ordinal));
        Assert.Equal(isBeyond, meter.Register!.IsBeyond);
        Assert.Equal(countedShare - 1, meter.Register.DifferenceShare, 6);
        Assert.StartsWith(words, meter.Register.Words, StringComparison.Ordinal);
    }

    static Task Read(OpenStudio studio, string register) => studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":{{register}},"unit":"m3"}""");
}
