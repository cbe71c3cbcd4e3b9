using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Logbook;

/// <summary>Readings of meters that people type: a register never runs backwards, and an odd one is a question.</summary>
public sealed class MeterReadingTests
{
    static readonly Instant Eight = OpenStudio.Start;

    static readonly ChannelOptions WallMeter = SomeStudio.Channel("meter", "gas-volume") with { Reports = "typed", CounterDigits = 5, CounterMaximumPerHour = 20 };

    static StudioConfiguration With(params ChannelOptions[] meters) => SomeStudio.With("shop", a => a with { Channels = meters });

    static async Task Read(OpenStudio studio, double reading, Duration later, string more = "")
    {
        studio.Now += later;
        await studio.Send("shop/log", $$"""{"entry":"meter-reading","id":"r{{reading}}","reading":{{reading}},"unit":"m3"{{more}}}""");
    }

    static IReadOnlyList<TypedStretch> Stretches(OpenStudio studio) => TypedStretch.Of(studio.The<MeterLog>().Of(studio.Channel("shop/meter")), studio.Channel("shop/meter"));

    [Fact]
    public async Task A_register_that_would_run_backwards_is_a_question_not_a_negative_volume()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 48_211, Duration.Zero);
        await Read(studio, 4_831, Days(3));
        var refused = Assert.Single(studio.Refused);
        Assert.Contains("backwards", refused.Reason, StringComparison.Ordinal);
        Assert.Contains("Is a digit missing", refused.Reason, StringComparison.Ordinal);
        Assert.Contains("exchange", refused.Reason, StringComparison.Ordinal);
        await Read(studio, 48_310, Hours(1));
        Assert.Equal(99, Assert.Single(Stretches(studio)).Amount);
    }

    [Fact]
    public async Task More_than_the_meter_can_count_is_a_question_too()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 4_821, Duration.Zero);
        await Read(studio, 48_310, Days(3));
        Assert.Contains("more than the meter can count", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_register_of_five_digits_goes_on_from_nought()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 99_950, Duration.Zero);
        await Read(studio, 42, Days(3));
        Assert.Empty(studio.Refused);
        Assert.Equal(92, Assert.Single(Stretches(studio)).Amount);
    }

    [Fact]
    public async Task An_exchanged_meter_goes_on_where_the_new_one_starts()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 48_000, Duration.Zero);
        await Read(studio, 48_100, Days(3), ""","exchange":true,"newMeterReading":7""");
        await Read(studio, 65, Days(2));
        Assert.Empty(studio.Refused);
        Assert.Equal([100.0, 58.0], Stretches(studio).Select(s => s.Amount!.Value));
    }

    [Fact]
    public async Task A_correction_takes_the_reading_s_place_and_is_asked_the_same()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 48_000, Duration.Zero);
        await Read(studio, 48_800, Days(3));
        await Read(studio, 48_810, Days(3));
        await studio.Send("shop/log", """{"entry":"correction","of":"r48800","reading":48080}""");
        Assert.Equal([80.0, 730.0], Stretches(studio).Select(s => s.Amount!.Value));
        await studio.Send("shop/log", """{"entry":"correction","of":"r48800","reading":48990}""");
        Assert.Contains("backwards", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
        await studio.Send("shop/log", """{"entry":"correction","of":"r48800"}""");
        Assert.Equal(810, Assert.Single(Stretches(studio)).Amount);
    }

    [Fact]
    public async Task A_reading_brought_in_late_has_its_place_in_time()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 48_000, Duration.Zero);
        await Read(studio, 48_200, Days(4));
        await studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":48090,"unit":"m3","time":"{{Eight + Days(2)}}"}""");
        Assert.Equal([90.0, 110.0], Stretches(studio).Select(s => s.Amount!.Value));
        await studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":48250,"unit":"m3","time":"{{Eight + Days(3)}}"}""");
        Assert.Contains("backwards", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_meters_of_one_kind_want_to_be_told_apart()
    {
        await using var studio = OpenStudio.Open(With(WallMeter, WallMeter with { Id = "hot-end", Serves = ["furnace-1", "glory-hole-1"] }));
        await Read(studio, 48_000, Duration.Zero);
        Assert.Contains("meter, hot-end", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
        await Read(studio, 48_001, Duration.Zero, ""","channel":"hot-end" """);
        Assert.Equal(48_001, Assert.Single(studio.The<MeterLog>().Of(studio.Channel("shop/hot-end"))).Number);
    }

    [Fact]
    public async Task An_appliance_without_a_meter_says_how_to_describe_one()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/log", """{"entry":"meter-reading","reading":1,"unit":"m3"}""");
        Assert.Contains("\"reports\":\"typed\"", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    // 1 CCF is 100 ft³ of 0.028316846592 m³: exact by definition.
    [Fact]
    public async Task A_register_in_hundreds_of_cubic_feet_counts_cubic_metres()
    {
        await using var studio = OpenStudio.Open(With(WallMeter with { CounterDigits = 4, CounterMaximumPerHour = null }));
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":9990,"unit":"CCF"}""");
        studio.Now += Days(7);
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":113,"unit":"CCF"}""");
        Assert.Empty(studio.Refused);
        Assert.Equal(123 * 2.8316846592, Assert.Single(Stretches(studio)).Amount!.Value, 9);
    }

    [Fact]
    public async Task Black_digits_are_known_to_a_step_and_red_ones_to_a_tenth()
    {
        await using var studio = OpenStudio.Open(With(WallMeter));
        await Read(studio, 48_000, Duration.Zero);
        await Read(studio, 48_100, Days(3));
        await Read(studio, 48_150.3, Days(1));
        await Read(studio, 48_190.7, Days(1));
        // Each end rectangular over one step: √2 / √12 (GUM, JCGM 100:2008, 4.3.7).
        Assert.Equal(Math.Sqrt(2.0 / 12), Stretches(studio)[0].ReadingUncertainty, 9);
        Assert.Equal(0.1 * Math.Sqrt(2.0 / 12), Stretches(studio)[2].ReadingUncertainty, 9);
    }
}
