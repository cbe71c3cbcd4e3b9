using HotShop.Monitor.Configuration;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Money;

/// <summary>How sure the account is, and of what its doubt is made. Limits are rectangular and add by their squares (GUM, JCGM 100:2008, 4.3.7, 5.1.2).</summary>
public sealed class DoubtTests
{
    const double Normal95 = 1.959963984540054;

    /// <summary>Limits in percent: class 1.5, 5 K of 288.15, 5 mbar of 1013.25, what the ideal gas leaves out, 2 % of heating value (common practice).</summary>
    static readonly (string Name, double Percent)[] limits =
        [("heating value", 2), ("line temperature", 5 / 288.15 * 100), ("class of shop/meter", 1.5), ("line pressure", 5 / 1013.25 * 100), ("compressibility", 0.05)];

    static double Squares => limits.Sum(l => l.Percent * l.Percent);

    /// <summary>One gas meter for the whole studio, 1 m³/h at 10 kWh/m³ and base conditions, 0.10 a kWh.</summary>
    static StudioConfiguration OneMeter(double? meterClass = null) => SomeStudio.Configuration with
    {
        Prices = [new() { From = "2020-01-01", Energy = "gas", PerKilowattHour = 0.10m, StandingChargePerDay = 1m }],
        Gas = new() { GrossKilowattHoursPerCubicMetre = 10, LineGaugeMillibar = 0, LineCelsius = 15 },
        Appliances = [new() { Id = "shop", Kind = "shop", Channels = [SomeStudio.Channel("meter", "gas-flow", 3600) with { Class = meterClass }] }],
    };

    static readonly Instant february = Instant.FromUtc(2026, 1, 31, 23, 0), april = Instant.FromUtc(2026, 3, 31, 22, 0);

    static async Task<OpenStudio> Filled(StudioConfiguration configuration)
    {
        var studio = OpenStudio.Open(configuration, february - Hours(2));
        await studio.Send("shop/meter", Times.Steady(1, Hours(1), february - Hours(2), april + Hours(2)));
        studio.Now = april + Hours(2);
        await studio.Move();
        return studio;
    }

    static Account March(OpenStudio studio) => studio.The<AccountBook>().Of(new LocalDate(2026, 3, 1), new LocalDate(2026, 3, 31), studio.Now);

    [Fact]
    public async Task The_doubt_of_a_month_is_taken_apart_into_its_reasons()
    {
        await using var studio = await Filled(OneMeter());
        var account = March(studio);
        Assert.Equal(7430, account.EnergyKwh.Value, 6);   // 743 hours
        Assert.Equal(limits.Select(l => l.Name), account.Doubts.Select(d => d.Name));
        foreach (var (doubt, limit) in account.Doubts.Zip(limits))
        {
            Assert.Equal(limit.Percent * limit.Percent / Squares, doubt.Share.Value, 9);
            // 19 of 20 parts of what lies within a rectangle.
            Assert.Equal(0.95 * limit.Percent / 100 * 7430, doubt.EnergyKwhHalfWidth95.Value, 6);
        }
        Assert.Equal(Normal95 * Math.Sqrt(Squares / 3) / 100, account.EnergyKwh.High95 / 7430 - 1, 9);
        // The energy's doubt at its price; the standing charge is certain.
        Assert.Equal(743m + 31m, account.Cost!.Value);
        Assert.Equal(743 * Normal95 * Math.Sqrt(Squares / 3) / 100, (double)(account.Cost.High95 - account.Cost.Value), 0.01);
        Assert.Equal("The energy is known to ±3,5 % (95 %), mostly for the gas's heating value (42,1 % of the doubt) and the gas's line temperature (31,7 % of the doubt)", Plain(new AccountStory(account, studio.The<AccountBook>().Format).HowSure));
    }

    static string? Plain(string? text) => text?.Replace('\u00a0', ' ');

    [Fact]
    public async Task A_better_meter_and_a_bill_that_knows_its_gas_make_the_month_surer()
    {
        await using var studio = await Filled(OneMeter(meterClass: 0.5) with
        {
            Gas = new() { GrossKilowattHoursPerCubicMetre = 10, LineGaugeMillibar = 0, LineCelsius = 15, GrossHeatingValueUncertaintyPercent = 1, LineUncertaintyKelvin = 2, LineUncertaintyMillibar = 0 },
        });
        var squares = 0.5 * 0.5 + 1 + Math.Pow(2 / 288.15 * 100, 2) + 0.05 * 0.05;
        Assert.Equal(Normal95 * Math.Sqrt(squares / 3) / 100, March(studio).EnergyKwh.High95 / 7430 - 1, 9);
    }

    [Fact]
    public async Task A_difference_of_two_months_by_one_meter_is_free_of_most_of_its_error()
    {
        await using var studio = await Filled(OneMeter());
        var compared = March(studio).Comparisons[0];
        Assert.Equal((7430 - 6720, 743m - 672 + 3), (Math.Round(compared.EnergyDifferenceKwh.Value, 6), compared.Difference!.Value));
        // The meter is in both; the gas and its conditions are each month's own.
        var gas = Math.Sqrt((Squares - 1.5 * 1.5) / 3) / 100;
        var half = Normal95 * Math.Sqrt(Math.Pow(1.5 / Math.Sqrt(3) / 100 * (7430 - 6720), 2) + Math.Pow(gas * 7430, 2) + Math.Pow(gas * 6720, 2));
        Assert.Equal(half, compared.EnergyDifferenceKwh.High95 - compared.EnergyDifferenceKwh.Value, 6);
        Assert.Equal(half * 0.10, (double)(compared.Difference.High95 - compared.Difference.Value), 0.01);
    }

    [Fact]
    public async Task Lines_days_and_parts_are_as_sure_as_the_energy_in_them()
    {
        await using var studio = await Filled(OneMeter());
        var (account, relative) = (March(studio), (decimal)(Normal95 * Math.Sqrt(Squares / 3) / 100));
        foreach (var amount in new[] { account.Lines[0].Amount, account.Where[0].Amount! })
            Assert.Equal((double)(amount.Value * (1 + relative)), (double)amount.High95, 0.01);
        var standing = Assert.Single(account.Lines, l => l.LineKind == LineKind.Standing).Amount;
        Assert.Equal((standing.Value, standing.Value), (standing.Low95, standing.High95));
        Assert.All(account.Days, d => Assert.Equal((double)((d.Amount!.Value - 1) * relative), (double)(d.Amount.High95 - d.Amount.Value), 0.01));
        Assert.All(account.Days.SelectMany(d => d.Parts), p => Assert.Equal((double)relative, p.EnergyKwh.High95 / p.EnergyKwh.Value - 1, 6));
    }

    [Fact]
    public async Task A_value_sent_out_lies_in_the_interval_sent_with_it()
    {
        await using var studio = await AccountTests.Filled(AccountTests.Steady(), OpenStudio.Start - Hours(30), OpenStudio.Start);
        var values = new DerivedValues(
            studio.Plan, studio.The<HotShop.Monitor.Pot.PotBook>(), studio.The<HotShop.Monitor.Fuel.FuelBook>(), studio.The<HotShop.Monitor.Readings.LatestReadings>()).At(studio.Now).ToList();
        Assert.Equal(["pot-mass", "energy-last-hour", "energy-today"], values.Where(v => v.Appliance == "furnace-1").Select(v => v.Name));
        Assert.All(values, v => Assert.InRange(v.Value, v.ValueLow95, v.ValueHigh95));
        Assert.All(values, v => Assert.Equal((v.ValueHigh95 - v.ValueLow95) / 2, v.Uncertainty, 9));
        Assert.All(values, v => Assert.True(v.Uncertainty > 0));
    }
}
