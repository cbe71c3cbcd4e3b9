using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>From meter readings and the log of charges to fuel per kilogram.</summary>
public sealed class MeltingBookTests : IAsyncDisposable
{
    /// <summary>kWh of a m³ at the meter: (101,325 + 2,100) / 101,325 Pa at 15 °C, 10.55 kWh/m³ gross (the configuration's defaults).</summary>
    const double KilowattHoursPerCubicMetre = 103_425 / 101_325.0 * 10.55;

    const double Held = 2;

    static readonly StudioConfiguration Configuration = SomeStudio.Configuration with
    {
        Appliances = [.. SomeStudio.Configuration.Appliances.Select(a => a.Id != "furnace-1" ? a : a with { Channels = [.. a.Channels.Select(c => c with { IntervalSeconds = 1200 })] })],
    };

    readonly OpenStudio studio = OpenStudio.Open(Configuration, OpenStudio.Start);

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    AppliancePlan Furnace => studio.Plan.Appliance("furnace-1")!;

    /// <summary>Twelve and more days from a Monday on: charged at 18 h UTC on four days of five, a tenth of a m³ more for each kilogram over the next hours, and tallies that say nobody gathered.</summary>
    async Task Live(int days, double flow = Held, double perKilogram = 0.1, int from = 0)
    {
        var start = OpenStudio.Start + Days(from);
        var flows = new List<(Instant, double)>();
        var setpoints = new List<(Instant, double)>();
        foreach (var at in Every(Minutes(20), start, start + Days(days)))
        {
            var day = (int)(at - OpenStudio.Start + Hours(8)).TotalDays;
            // Eleven samples of twenty minutes, whose trapezoids begin and end within the hours of the charge.
            var isMelting = at.InUtc().TimeOfDay is var time && time > new LocalTime(18, 0) && time < new LocalTime(22, 0) && IsCharged(day);
            var melting = isMelting ? KilogramsOf(day) * perKilogram / (11 / 3.0) : 0;
            flows.Add((at, flow + melting));
            setpoints.Add((at, 1150));
        }
        for (var day = from; day < from + days; day++)
            if (IsCharged(day))
                await studio.Send("furnace-1/log", $$"""{"entry":"charge","material":"cullet","massKg":{{KilogramsOf(day)}},"time":"{{Evening(day)}}"}""", arrived: Evening(day));
        for (var day = from; day < from + days; day++)
            await studio.Send("furnace-1/log", $$"""{"entry":"tally","gathers":{"medium":0},"from":"{{Evening(day) - Hours(8)}}","to":"{{Evening(day) - Hours(1)}}"}""", arrived: Evening(day));
        await studio.Send("furnace-1/gas-flow", flows);
        await studio.Send("furnace-1/setpoint", setpoints);
    }

    static Instant Evening(int day) => OpenStudio.Start + Days(day) + Hours(10);

    static bool IsCharged(int day) => day % 5 != 4;

    static int KilogramsOf(int day) => 40 + 7 * (day % 3);

    [Fact]
    public async Task Fuel_per_kilogram_comes_out_three_ways_with_intervals()
    {
        await Live(15);
        var report = studio.The<MeltingBook>().Of(Furnace, OpenStudio.Start, studio.Now, studio.Now)!;
        var line = report.Line!;
        Assert.Equal((null, null, null, null), (report.HoldingUnknown, report.MeltingUnknown, report.ThroughputUnknown, report.Note));
        Assert.Equal(Held * KilowattHoursPerCubicMetre, report.Holding!.Value.Value, 0.01);
        Assert.Equal(1150, report.HeldCelsius!.Value, 0.01);
        Assert.Equal(0.1 * KilowattHoursPerCubicMetre, line.Melting.Value, 0.01);
        Assert.True(line.Melting.Low95 < line.Melting.Value && line.Melting.Value < line.Melting.High95);
        Assert.Equal(line.KilowattHours / line.Kilograms, line.Gross.Value, 1e-9);
        // Half the throughput: the holding weighs twice as much on each kilogram.
        var half = line.At(line.KilogramsPerDay / 2)!.Value.Value;
        Assert.Equal(Held * KilowattHoursPerCubicMetre * 24 / line.KilogramsPerDay * 2 + line.Melting.Value, half, 0.05);
        Assert.Empty(studio.Errors);
    }

    [Fact]
    public async Task What_is_not_known_says_what_it_needs()
    {
        var book = studio.The<MeltingBook>();
        Assert.Null(book.Of(studio.Plan.Appliance("annealer-2")!, OpenStudio.Start - Days(3), OpenStudio.Start, studio.Now));
        var silent = book.Of(Furnace, OpenStudio.Start - Days(30), OpenStudio.Start, studio.Now)!;
        Assert.Equal((null, null), (silent.Holding, silent.Line));
        Assert.Contains("no hour of its fuel is measured", silent.HoldingUnknown!, StringComparison.Ordinal);
        await Live(6);
        var early = book.Of(Furnace, OpenStudio.Start, studio.Now, studio.Now)!;
        Assert.NotNull(early.Holding);
        Assert.Null(early.Line);
        Assert.Contains("7 whole measured days", early.MeltingUnknown!, StringComparison.Ordinal);
        Assert.Null(book.Compare(Furnace, OpenStudio.Start + Days(3), studio.Now, studio.Now));
    }

    [Fact]
    public async Task A_month_that_melted_as_much_and_burnt_more_stands_out_against_the_line_before_it()
    {
        await Live(20);
        await Live(10, flow: Held * 1.1, from: 20);
        var comparison = studio.The<MeltingBook>().Compare(Furnace, OpenStudio.Start + Days(20), studio.Now, studio.Now)!;
        Assert.InRange(comparison.Baseline.Days.Count, 18, 20);
        var wasted = Held * 0.1 * KilowattHoursPerCubicMetre * 24 * comparison.Days.Count;
        Assert.Equal(-wasted, comparison.SavedKilowattHours.Value, wasted * 0.03);
        Assert.True(comparison.SavedKilowattHours.High95 < 0);
        Assert.Equal(comparison.SavedKilowattHours.StandardUncertainty, comparison.RunningKilowattHours[^1].StandardUncertainty, 9);
        Assert.True(comparison.RunningKilowattHours[0].StandardUncertainty < comparison.RunningKilowattHours[^1].StandardUncertainty);
        Assert.Equal(wasted, comparison.RunningKilowattHours[^1].Value, wasted * 0.03);
        Assert.True(comparison.ActualKilowattHours / comparison.Kilograms > comparison.ExpectedPerKilogram!.Value.High95);
    }

    [Fact]
    public async Task A_furnace_whose_gathers_nobody_logs_has_its_doors_in_the_holding_power_and_says_so()
    {
        var flows = Every(Minutes(20), OpenStudio.Start, OpenStudio.Start + Days(8)).Select(at => (at, Held)).ToList();
        await studio.Send("furnace-1/gas-flow", flows);
        var report = studio.The<MeltingBook>().Of(Furnace, OpenStudio.Start, studio.Now, studio.Now)!;
        Assert.Contains("no gathers", report.Note!, StringComparison.Ordinal);
        Assert.Equal(Held * KilowattHoursPerCubicMetre, report.Holding!.Value.Value, 0.01);
        Assert.Null(report.HeldCelsius);
    }
}
