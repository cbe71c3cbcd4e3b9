using HotShop.Physics.Melting;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Melting;

public class HeldHoursTests
{
    static readonly IReadOnlyList<HeldHour> Week = HeldHours.Of(new SomeFurnace().Hours(14));

    static HeldHour At(int day, int hour) => Week[day * 24 + hour];

    [Fact]
    public void A_cook_counts_at_the_temperature_held_before_it()
    {
        Assert.Equal(1200, At(2, 21).Hour.SetpointCelsius);
        Assert.Equal(1150, At(2, 21).HeldCelsius);
        Assert.False(At(2, 21).IsSettled);
    }

    [Fact]
    public void A_colder_free_day_counts_at_its_own()
    {
        Assert.Equal(1090, At(5, 12).HeldCelsius);
        Assert.True(At(5, 12).IsSettled);
        Assert.False(At(5, 3).IsSettled);
    }

    [Fact]
    public void Holding_is_read_when_glass_and_walls_have_come_to_rest()
    {
        Assert.False(At(2, 1).IsSettled);
        Assert.False(At(2, 7).IsSettled);
        Assert.True(At(2, 12).IsSettled);
        Assert.False(At(2, 19).IsSettled);
    }

    // Common practice: batch melts flat within 45 to 90 minutes, so a hotter level without a charge is no cook.
    [Fact]
    public void A_hotter_level_that_nobody_charged_at_is_held()
    {
        var hours = Enumerable.Range(0, 30).Select(i => new FurnaceHour(SomeFurnace.Start + Duration.FromHours(i), 20, i < 10 ? 1150 : 1180, 0, 0, 0)).ToList();
        Assert.Equal(1180, HeldHours.Of(hours)[25].HeldCelsius);
        Assert.True(HeldHours.Of(hours)[25].IsSettled);
    }

    [Fact]
    public void Without_a_setpoint_all_hours_count_alike_and_charges_still_tell_when_it_is_settled()
    {
        var hours = HeldHours.Of(new SomeFurnace { IsMeasuringSetpoint = false }.Hours(14));
        Assert.All(hours, h => Assert.Null(h.HeldCelsius));
        Assert.False(hours[2 * 24 + 21].IsSettled);
        Assert.True(hours[2 * 24 + 12].IsSettled);
    }

    [Fact]
    public void An_hour_in_which_somebody_may_have_gathered_unlogged_does_not_count_as_holding()
    {
        var hours = new SomeFurnace().Hours(42).Select((h, i) => i / 24 % 2 == 0 ? h with { IsWorkUnlogged = true, KilowattHours = h.KilowattHours + 5 } : h).ToList();
        Assert.Equal(20, HoldingFit.Of(HeldHours.Of(hours))!.Kilowatts(1150).Value, 0.06);
    }

    // Counts that are off at random flatten a slope (Wald, Annals of Mathematical Statistics 11, 1940): a third of the gathers forgotten here and there, none there, must not lift
    // the holding power.
    [Fact]
    public void Forgotten_gathers_do_not_lift_the_holding_power()
    {
        var random = new Random(7);
        var hours = new SomeFurnace { DoorOfAGather = 0.15 }.Hours(42).Select(h => Logged(h, random)).ToList();
        Assert.Equal(20, HoldingFit.Of(HeldHours.Of(hours))!.Kilowatts(1150).Value, 0.12);
    }

    static FurnaceHour Logged(FurnaceHour hour, Random random) =>
        new(hour.From, hour.KilowattHours, hour.SetpointCelsius, hour.ChargedKilograms, 0, Enumerable.Range(0, (int)hour.Gathers).Count(_ => random.NextDouble() > 0.3));

    [Theory]
    [InlineData(new[] { 18, 19, 20, 21 }, new[] { 10, 12, 15 }, 10)]
    [InlineData(new[] { 18, 19, 20, 21 }, new[] { 7, 9, 15 }, 7)]
    [InlineData(new[] { 18, 19, 20, 21 }, new int[0], 10)]
    [InlineData(new[] { 7 }, new[] { 15, 17 }, 15)]
    [InlineData(new int[0], new[] { 9, 12 }, 6)]
    public void Days_are_cut_when_the_charge_has_melted_and_work_has_not_begun(int[] charges, int[] gathers, int edge) =>
        Assert.Equal(edge, MeltingDay.EdgeHour(charges.Select(h => (h, 10.0)), gathers.Select(h => (h, 20.0))));
}
