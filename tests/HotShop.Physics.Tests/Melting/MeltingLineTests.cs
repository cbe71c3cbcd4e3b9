using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Melting;

public class MeltingLineTests
{
    // Energy Monitoring and Target Setting using CUSUM, Cheriton Technology Publications 1989: a gas-fired furnace burns 9831 + 15.16 P therms in a week of P tonnes.
    // By arithmetic 34.8, 25.0 and 21.7 therms a tonne at 500, 1000 and 1500 t a week. Here a therm stands for a kWh and a tonne for a kg.
    [Fact]
    public void The_published_furnace_is_taken_apart_into_what_holds_it_and_what_melts()
    {
        var furnace = new SomeFurnace
        {
            HoldingKilowatts = 9831 / 168.0, IdleKilowatts = 9831 / 168.0, KilowattHoursPerKilogram = 15.16, DoorsOfAnEvening = 0, DoorOfAGather = 0, CookKilowattHours = 0,
            Noise = hour => 0.05 * Math.Sin(hour * 1.7), KilogramsOfDay = day => 200 + 60 * Math.Sin(day * 2.1),
        };
        var line = furnace.Line(41).Line!;
        Assert.Equal(9831 / 168.0, line.Holding.Value, 0.02);
        Assert.Equal(15.16, line.Melting.Value, 0.02);
        Assert.Equal(15.16, line.NextKilogram!.Value.Value, 0.02);
        foreach (var (tonnesAWeek, therms) in new[] { (500, 34.8), (1000, 25.0), (1500, 21.7) })
            Assert.Equal(therms, line.At(tonnesAWeek / 7.0)!.Value.Value, 0.05);
        Assert.Equal(line.Gross.Value, line.At(line.KilogramsPerDay)!.Value.Value, 1e-9);
    }

    [Fact]
    public void Doors_and_cook_belong_to_melting_and_not_to_holding()
    {
        var furnace = new SomeFurnace();
        var (holding, line) = furnace.Line(42);
        Assert.Equal(20, holding.Kilowatts(1150).Value, 0.05);
        Assert.Equal(17, holding.Kilowatts(1090).Value, 0.05);
        // What it burnt above holding, by the recipe of the story itself.
        var counted = furnace.Hours(42).Where(h => h.From >= line!.Days[0].From && h.From < line.Days[^1].To).ToList();
        var held = counted.Sum(h => h.SetpointCelsius == 1090 ? 17.0 : 20);
        Assert.Equal(held / counted.Count, line!.Holding.Value, 0.03);
        Assert.Equal((counted.Sum(h => h.KilowattHours!.Value) - held) / counted.Sum(h => h.ChargedKilograms), line.Melting.Value, 0.03);
        Assert.InRange(line.Melting.Value, 1.1 + 1, 1.1 + 1.6);
        // One more kilogram in the same evening opens no further door.
        Assert.Equal(1.1, line.NextKilogram!.Value.Value, 0.05);
    }

    [Fact]
    public void Gross_is_holding_and_melting_together()
    {
        var line = new SomeFurnace().Line(42).Line!;
        Assert.Equal(line.Gross.Value, line.Holding.Value * line.Hours / line.Kilograms + line.Melting.Value, 1e-9);
    }

    [Fact]
    public void The_slope_of_mixed_evenings_is_that_of_their_mix()
    {
        var line = new SomeFurnace { IsBatchDay = day => day % 3 == 0 }.Line(42).Line!;
        var share = line.Charged.Sum(d => d.ReactingKilograms) / line.Kilograms;
        Assert.InRange(share, 0.2, 0.5);
        Assert.Equal(1.1 + 0.5 * share, line.NextKilogram!.Value.Value, 0.05);
    }

    [Fact]
    public void The_error_of_one_meter_does_not_shrink_with_the_number_of_days()
    {
        var doubt = new CommonDoubt(Energy: 0.015, Glass: 0.01);
        foreach (var days in new[] { 28, 84 })
        {
            var line = new SomeFurnace { Noise = _ => 0 }.Line(days, doubt).Line!;
            Assert.Equal(0.015, line.Holding.RelativeUncertainty, 0.001);
            Assert.Equal(double.Hypot(0.015, 0.01), line.Gross.RelativeUncertainty, 1e-9);
        }
    }

    [Fact]
    public void What_cannot_be_known_is_not_said()
    {
        Assert.Null(HoldingFit.Of(HeldHours.Of(new SomeFurnace().Hours(3))));
        Assert.Null(new SomeFurnace { KilogramsOfDay = _ => 0 }.Line(42).Line);
        Assert.Null(new SomeFurnace().Line(30, from: 25).Line);
        var alike = new SomeFurnace { KilogramsOfDay = _ => 50 }.Line(42).Line!;
        Assert.True(alike.Melting.Value > 1.1);
        Assert.Equal((null, null, null), (alike.NextKilogram, alike.At(40), alike.Expected(alike.Days)));
    }

    [Fact]
    public void A_day_with_hours_unmeasured_is_left_out_and_changes_nothing()
    {
        var hours = new SomeFurnace().Hours(42).ToList();
        for (var i = 10 * 24 + 15; i < 10 * 24 + 22; i++) hours[i] = hours[i] with { KilowattHours = null };
        var held = HeldHours.Of(hours);
        var holding = HoldingFit.Of(held)!;
        var days = MeltingDay.Between(held, SomeFurnace.Edges(42), holding);
        Assert.Equal(40, days.Count);
        Assert.Equal(new SomeFurnace().Line(42).Line!.Melting.Value, MeltingLine.Of(held, days, holding, new(0, 0))!.Melting.Value, 0.05);
    }

    [Fact]
    public void A_burner_that_got_worse_shows_against_the_line_and_a_busier_month_does_not()
    {
        var line = new SomeFurnace().Line(42).Line!;
        var busier = Later(new SomeFurnace { KilogramsOfDay = day => 62 + 12 * Math.Sin(day * 2.1) });
        Assert.InRange(busier.Sum(d => d.KilowattHours), line.Expected(busier)!.Value.Low95, line.Expected(busier)!.Value.High95);
        var worse = Later(new SomeFurnace { HoldingKilowatts = 20.8, IdleKilowatts = 17.7 });
        Assert.True(worse.Sum(d => d.KilowattHours) > line.Expected(worse)!.Value.High95 + 300);
        // The meter is the same before and after: it is in doubt only for what they differ by.
        var doubtful = new SomeFurnace().Line(42, new(0.0178, 0.01)).Line!;
        var (saved, expected) = (doubtful.Saved(worse)!.Value, doubtful.Expected(worse)!.Value);
        Assert.Equal(expected.Value - worse.Sum(d => d.KilowattHours), saved.Value, 1e-6);
        Assert.Equal(double.Hypot(expected.StandardUncertainty, 0.0178 * saved.Value), saved.StandardUncertainty, 1e-6);
        Assert.Equal(line.Expected(worse)!.Value.StandardUncertainty, line.Saved(worse)!.Value.StandardUncertainty, 1e-9);
        Assert.Equal(Estimate.Relative(line.KilogramsPerDay, 0.01), doubtful.PerDay);
        // What a day would have burnt only held is as uncertain as the holding power, and as the meter.
        var held = doubtful.HoldingOf(worse[0]);
        Assert.Equal(worse[0].HoldingKilowattHours, held.Value);
        Assert.Equal(double.Hypot(line.Holding.StandardUncertainty * worse[0].Hours, 0.0178 * held.Value), held.StandardUncertainty, 1e-6);
        // Summed day by day the waste rises all along.
        var running = RunningDifference.Of([.. worse.Select(d => d.KilowattHours)], [.. worse.Select(d => line.Expected([d])!.Value.Value)]);
        Assert.True(running[^1] > running[running.Count / 2] && running[running.Count / 2] > running[0] && running[0] > 0);

        IReadOnlyList<MeltingDay> Later(SomeFurnace furnace) => MeltingDay.Between(HeldHours.Of(furnace.Hours(28)), SomeFurnace.Edges(28), new SomeFurnace().Line(42).Holding);
    }
}
