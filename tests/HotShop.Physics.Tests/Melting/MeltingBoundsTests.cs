using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Melting;

/// <summary>Where holding, charging and melting part, to the hour and the kelvin that the documents state.</summary>
public class MeltingBoundsTests
{
    /// <summary>Hours at setpoints, so many each; a charge in one of them.</summary>
    static IReadOnlyList<HeldHour> Held(int? chargedAt, params (int Hours, double Celsius)[] levels)
    {
        var setpoints = levels.SelectMany(l => Enumerable.Repeat(l.Celsius, l.Hours)).ToList();
        return HeldHours.Of([.. setpoints.Select((celsius, i) => new FurnaceHour(SomeFurnace.Start + Duration.FromHours(i), 20, celsius, i == chargedAt ? 30 : 0, 0, 0))]);
    }

    static HeldHour Settled(int hour, double kilowatts, double celsius = 1150, double gathers = 0) =>
        new(new FurnaceHour(SomeFurnace.Start + Duration.FromHours(hour), kilowatts, celsius, 0, 0, gathers), celsius, true);

    [Theory, InlineData(1151.5, 1150.75), InlineData(1151.504, 1151.504)]
    public void A_controller_rounds_by_a_kelvin_and_a_half(double setpoint, double held) =>
        Assert.Equal(held, Held(null, (10, 1150), (10, setpoint))[15].HeldCelsius!.Value, 1e-9);

    [Theory, InlineData(2, 1150), InlineData(3, 1160)]
    public void A_level_of_three_hours_is_held_and_a_shorter_one_is_a_pause(int hours, double held) =>
        Assert.Equal(held, Held(null, (10, 1150), (hours, 1160), (10, 1150))[11].HeldCelsius);

    [Theory, InlineData(5.0, 1150), InlineData(4.99, 1154.99)]
    public void Five_kelvin_more_around_a_charge_are_its_cook(double hotter, double held) =>
        Assert.Equal(held, Held(10, (10, 1150), (10, 1150 + hotter))[15].HeldCelsius!.Value, 1e-9);

    [Theory, InlineData(12, 1150), InlineData(13, 1200), InlineData(4, 1150), InlineData(3, 1200)]
    public void A_cook_begins_from_two_hours_before_a_charge_to_six_after(int chargedAt, double held) =>
        Assert.Equal(held, Held(chargedAt, (10, 1150), (10, 1200))[11].HeldCelsius);

    [Fact]
    public void A_charge_and_a_change_of_setpoint_are_over_after_six_hours()
    {
        var charged = Held(20, (40, 1150));
        Assert.Equal((false, true), (charged[26].IsSettled, charged[27].IsSettled));
        var changed = Held(null, (10, 1150), (30, 1180));
        Assert.Equal((false, true), (changed[15].IsSettled, changed[16].IsSettled));
    }

    [Theory, InlineData(23, 5, false), InlineData(24, 4, false), InlineData(24, 5, true)]
    public void Holding_takes_a_day_of_hours_from_five_days(int hours, int days, bool isKnown) =>
        Assert.Equal(isKnown, HoldingFit.Of([.. Enumerable.Range(0, hours).Select(i => Settled(i % days * 24 + i / days, 20 + 0.01 * (i % 3))).OrderBy(h => h.Hour.From)]) is not null);

    [Theory, InlineData(1155.0, 20.5), InlineData(1155.02, 20.0)]
    public void Levels_five_kelvin_apart_tell_what_a_kelvin_costs(double hotter, double kilowatts)
    {
        var hours = Enumerable.Range(0, 120).Select(i => i % 2 == 0 ? Settled(i, 20) : Settled(i, 21, hotter)).ToList();
        Assert.Equal(kilowatts, HoldingFit.Of(hours)!.Kilowatts(1150).Value, 1e-9);
    }

    // 20 kW and half a kW for each gather an hour; on days held to either side of 1155 °C twice and six times an hour. Taken together, gathers would tell nothing.
    [Fact]
    public void Usual_gathers_are_those_of_an_hour_and_of_ten_degrees()
    {
        var hours = Enumerable.Range(0, 240).Select(i => i / 24 % 2 == 0 ? Settled(i, 21, 1154.9, 2) : Settled(i, 23, 1155.1, 6)).ToList();
        Assert.Equal(20, HoldingFit.Of(hours)!.Kilowatts(null).Value, 1e-6);
    }

    // A constant alone: variance Σ w r r / n² over pairs up to a day apart, weights falling to 0 at 25 h (Newey and West 1987), n/(n − 1); Student's t of 4 degrees of freedom is 2.776445.
    [Fact]
    public void The_doubt_of_holding_allows_for_hours_of_a_day_that_are_off_together()
    {
        const int n = 120;
        var hours = Enumerable.Range(0, n).Select(i => Settled(i, 20 + Math.Sin(i * 0.3) + 0.2 * Math.Cos(i * 2.1))).ToList();
        var mean = hours.Average(h => h.Hour.KilowattHours!.Value);
        var residuals = hours.Select(h => h.Hour.KilowattHours!.Value - mean).ToArray();
        var sum = 0.0;
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                if (Math.Abs(i - j) <= 24) sum += (1 - Math.Abs(i - j) / 25.0) * residuals[i] * residuals[j];
        Assert.Equal(Math.Sqrt(sum / n / n * n / (n - 1)) * 2.776445 / 1.959964, HoldingFit.Of(hours)!.Kilowatts(null).StandardUncertainty, 1e-6);
    }

    [Theory, InlineData(189, 0), InlineData(190, 1)]
    public void A_day_counts_when_95_of_100_hours_are_measured(int measured, int days)
    {
        var hours = Enumerable.Range(0, 200).Select(i => new HeldHour(new FurnaceHour(SomeFurnace.Start + Duration.FromHours(i), i < measured ? 20 : null, 1150, 0, 0, 0), 1150, true)).ToList();
        Assert.Equal(days, MeltingDay.Between(hours, [SomeFurnace.Start, SomeFurnace.Start + Duration.FromHours(200)], Holding).Count);
    }

    [Theory, InlineData(2.005, 7), InlineData(1.995, 9)]
    public void Work_has_begun_with_two_of_a_hundred_gathers(double atSeven, int edge) =>
        Assert.Equal(edge, MeltingDay.EdgeHour(new[] { 18, 19, 20, 21 }.Select(h => (h, 10.0)), [(7, atSeven), (9, 50), (15, 50 - atSeven)]));

    static HoldingFit Holding => HoldingFit.Of([.. Enumerable.Range(0, 120).Select(i => Settled(i, 20 + 0.01 * (i % 3)))])!;

    /// <summary>Days of 480 kWh for holding, 40 for doors and 1.1 a kilogram.</summary>
    static MeltingLine? Line(params double[] kilograms)
    {
        var days = kilograms.Select((kg, i) => new MeltingDay(SomeFurnace.Start + Duration.FromDays(i), SomeFurnace.Start + Duration.FromDays(i + 1), 24,
            480 + (kg > 0 ? 40 + 1.1 * kg + Math.Sin(i * 1.3) : 0), 480, kg, 0)).ToList();
        return MeltingLine.Of([], days, Holding, new(0, 0));
    }

    static double[] Alternating(int days, double difference) => [.. Enumerable.Range(0, days).Select(i => i % 2 == 0 ? 100 - difference : 100 + difference)];

    [Fact]
    public void Melting_takes_seven_days_and_three_charged_ones_and_its_slope_eight()
    {
        Assert.Null(Line(Alternating(6, 20)));
        Assert.NotNull(Line(Alternating(7, 20)));
        Assert.Null(Line(50, 60, 0, 0, 0, 0, 0));
        Assert.NotNull(Line(50, 60, 70, 0, 0, 0, 0));
        Assert.Null(Line(Alternating(7, 20))!.NextKilogram);
        Assert.NotNull(Line(Alternating(8, 20))!.NextKilogram);
    }

    // Eight days of 100 ± d kg scatter by d·√(8/7).
    [Theory, InlineData(0.0499, false), InlineData(0.0501, true)]
    public void Charges_that_scatter_by_a_twentieth_show_a_slope(double spread, bool isKnown) =>
        Assert.Equal(isKnown, Line(Alternating(8, 100 * spread / Math.Sqrt(8 / 7.0)))!.NextKilogram is not null);

    [Fact]
    public void Kilograms_a_day_are_those_of_24_hours()
    {
        var line = Line(Alternating(8, 20))!;
        Assert.Equal(100, line.KilogramsPerDay, 1e-9);
        Assert.Equal(line.KilowattHours / line.Kilograms, line.At(100)!.Value.Value, 1e-9);
    }

    // Twelve charged days leave ten degrees of freedom: Student's t 2.228139. Neighbours up to three days apart may be off together.
    [Fact]
    public void The_doubt_of_the_next_kilogram_allows_for_days_that_are_off_together()
    {
        var line = Line([.. Enumerable.Range(0, 12).Select(i => 100 + 20 * Math.Sin(i * 2.1))])!;
        var fit = LinearFit.Of([.. line.Charged.Select(d => new[] { 1, d.ChargedKilograms })], [.. line.Charged.Select(d => d.AboveHoldingKilowattHours)])!;
        var expected = fit.Combined([0, 1], fit.NeweyWest([.. Enumerable.Range(0, 12)], 3)).StandardUncertainty * 2.228139 / 1.959964;
        Assert.Equal(expected, line.NextKilogram!.Value.StandardUncertainty, expected * 1e-6);
    }
}
