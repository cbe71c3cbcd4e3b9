using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Fuel;

/// <summary>The studio as a whole: main meter, sensors behind it, what is typed, and what has no meter at all.</summary>
public sealed class StudioFuelTests
{
    static readonly Instant Eight = OpenStudio.Start;

    /// <summary>kWh of a cubic metre at the meter: sea level, 15 °C, 21 mbar; 10.55 kWh/m³ at 15 °C and 101.325 kPa.</summary>
    const double KilowattHoursPerCubicMetre = 103_425 / 101_325.0 * 10.55;

    static readonly StudioConfiguration Typed = SomeStudio.Configuration with
    {
        Appliances =
        [
            new() { Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", NameplateKilowatts = 90, Channels = [SomeStudio.Channel("crown", "temperature")] },
            new() { Id = "glory-hole-1", Kind = "glory-hole", Mode = "off", NameplateKilowatts = 80, Channels = [] },
            new() { Id = "shop", Kind = "shop", Channels = [SomeStudio.Channel("meter", "gas-volume") with { Reports = "typed", CounterDigits = 5 }] },
        ],
    };

    static StudioUse Use(OpenStudio studio, Instant from, Instant to) => studio.The<StudioFuel>().Between(from, to, studio.Now);

    static double Sum(StudioUse use, EnergyKind kind) => use.Shares.Where(s => s.Kind == kind).Sum(s => s.KilowattHours.Value);

    [Fact]
    public async Task A_main_meter_and_the_meters_behind_it_are_never_added_together()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Hours(2)));
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(2)).Select((at, i) => (at, 5000 + i * 0.05)));
        var use = Use(studio, Eight, Eight + Hours(2));
        Assert.Equal(6 * KilowattHoursPerCubicMetre, use.Gas.Value, 6);
        Assert.Equal(use.Gas.Value, Sum(use, EnergyKind.Gas), 6);
        var furnace = use.Shares.Single(s => s.Appliance == "furnace-1");
        var rest = use.Shares.Single(s => s.Appliance == "shop");
        Assert.Equal((Origin.Measured, Origin.Derived), (furnace.Origin, rest.Origin));
        Assert.Equal(4 * KilowattHoursPerCubicMetre, furnace.KilowattHours.Value, 6);
        Assert.Equal(2, rest.LineCubicMetres, 6);
        Assert.Equal(2 * 103_425 / 101_325.0, rest.BaseCubicMetres, 6);
        // All of the gas was measured, and nothing of the annealers' electricity.
        Assert.Equal(0.5, use.MeasuredShare, 9);
    }

    [Fact]
    public async Task Sensors_that_count_a_little_more_than_the_main_meter_leave_nothing_not_less()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", Steady(3.1, Seconds(10), Eight, Eight + Hours(2)));
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(2)).Select((at, i) => (at, 5000 + i * 0.05)));
        var use = Use(studio, Eight, Eight + Hours(2));
        Assert.All(use.Shares, s => Assert.True(s.KilowattHours.Value >= 0));
        Assert.Equal(6 * KilowattHoursPerCubicMetre, use.Gas.Value, 6);
        Assert.Equal(use.Gas.Value, Sum(use, EnergyKind.Gas), 6);
    }

    [Fact]
    public async Task Readings_typed_on_monday_and_thursday_give_the_volume_between_them_to_the_last_cubic_metre()
    {
        await using var studio = OpenStudio.Open(Typed);
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":48000,"unit":"m3"}""");
        studio.Now = Eight + Hours(72);
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":48300,"unit":"m3"}""");
        var use = Use(studio, Eight, Eight + Hours(72));
        Assert.Equal(300 * KilowattHoursPerCubicMetre, use.Gas.Value, 300 * KilowattHoursPerCubicMetre * 0.002);
        Assert.Equal(use.Gas.Value, Sum(use, EnergyKind.Gas), 6);
        Assert.Equal(1, use.MeasuredShare, 9);
        Assert.InRange(use.Gas.RelativeUncertainty, 0.017, 0.020);
        // One day of the three is known less well than all three: nobody read the meter at midnight.
        var day = studio.The<StudioFuel>().Use(Eight, Eight + Hours(72), FuelStep.Day, studio.Now);
        Assert.Equal(use.Gas.Value, day.Sum(d => d.Gas.Value), 6);
        Assert.True(day[1].Gas.RelativeUncertainty > 2 * use.Gas.RelativeUncertainty, $"{day[1].Gas}");
        Assert.DoesNotContain(day.SelectMany(d => d.Shares), s => s.Origin == Origin.Measured);
    }

    [Fact]
    public async Task A_glory_hole_that_was_off_gets_nothing_of_the_meter()
    {
        await using var studio = OpenStudio.Open(Typed);
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":48000,"unit":"m3"}""");
        studio.Now = Eight + Hours(72);
        await studio.Send("shop/log", """{"entry":"meter-reading","reading":48300,"unit":"m3"}""");
        var use = Use(studio, Eight, Eight + Hours(72));
        Assert.Equal(use.Gas.Value, use.Shares.Single(s => s.Appliance == "furnace-1").KilowattHours.Value, 6);
        Assert.DoesNotContain(use.Shares, s => s.Appliance == "glory-hole-1");
    }

    [Fact]
    public async Task Weeks_with_and_without_a_glory_hole_tell_the_two_fires_apart()
    {
        await using var studio = OpenStudio.Open(Typed);
        // True powers: furnace 3 m³/h always, glory hole 5 m³/h while it works; 10 h on every other day; the meter read every morning.
        var volume = 48_000.0;
        for (var day = 0; day < 20; day++)
        {
            await studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":{{volume}},"unit":"m3"}""");
            if (day % 2 == 0) await studio.Send("glory-hole-1/log", """{"entry":"mode","mode":"working"}""");
            studio.Now += Hours(10);
            if (day % 2 == 0) await studio.Send("glory-hole-1/log", """{"entry":"mode","mode":"off"}""");
            studio.Now += Hours(14);
            volume += 24 * 3 + (day % 2 == 0 ? 50 : 0);
        }
        await studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":{{volume}},"unit":"m3"}""");
        Assert.Empty(studio.Refused);
        var use = Use(studio, Eight, studio.Now);
        var glory = use.Shares.Single(s => s.Appliance == "glory-hole-1").KilowattHours;
        Assert.InRange(500 * KilowattHoursPerCubicMetre, glory.Low95, glory.High95);
        Assert.Equal(500 * KilowattHoursPerCubicMetre, glory.Value, 500 * KilowattHoursPerCubicMetre * 0.1);
    }
}
