using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Fuel;

/// <summary>From payloads to kWh, m³, kg and money, against hand calculations.</summary>
public sealed class FuelBookTests
{
    static readonly Instant Eight = OpenStudio.Start;

    /// <summary>Sea level, 15 °C, 21 mbar, base 15 °C and 101.325 kPa: one metered m³ is (101325 + 2100) / 101325 m³ at base conditions.</summary>
    const double BaseFactor = 103_425 / 101_325.0, GrossKilowattHours = 10.55;

    [Fact]
    public async Task Two_cubic_metres_an_hour_for_two_hours_are_what_the_supplier_bills()
    {
        // 2 m³ at 39.3 MJ/m³ are billed as 22.33 kWh with the factor 1.02264, which stands for 12.2 °C, 21 mbar and 67.5 m above the sea (UK suppliers' published example).
        const double billed = 4 * 1.02264 * 39.3 / 3.6;
        Assert.Equal(22.33, billed / 2, 0.005);
        await using var studio = OpenStudio.Open(SomeStudio.Configuration with
        {
            Gas = new() { GrossKilowattHoursPerCubicMetre = 39.3 / 3.6, LineGaugeMillibar = 21, LineCelsius = 12.2, AltitudeMetres = 67.5 },
        });
        await studio.Send("furnace-1/gas-flow", Stepped(Eight, irregular: new Random(3)));
        var use = studio.Fuel("furnace-1", Eight, Eight + Hours(2));
        Assert.Equal(billed, use.EnergyKilowattHours, billed * 0.001);
        Assert.Equal(1, use.MeasuredShare, 12);
        studio.Now = Eight + Hours(3);
        await studio.Move();
        Assert.Equal(use, studio.Fuel("furnace-1", Eight, Eight + Hours(2)));
    }

    /// <summary>2.500 m³/h for an hour, then within a second 1.500: 2.000 m³/h in the mean. Both ends sampled, 1 to 20 s apart.</summary>
    internal static IEnumerable<(Instant At, double Value)> Stepped(Instant start, Random irregular)
    {
        for (var at = start; at < start + Hours(1); at += Seconds(1 + 19 * irregular.NextDouble())) yield return (at, 2.5);
        yield return (start + Hours(1) - Seconds(0.5), 2.5);
        for (var at = start + Hours(1) + Seconds(0.5); at < start + Hours(2); at += Seconds(1 + 19 * irregular.NextDouble())) yield return (at, 1.5);
        yield return (start + Hours(2), 1.5);
    }

    [Fact]
    public async Task Practice_30_half_an_hour_without_readings_is_unmeasured_not_free()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Minutes(45)).Concat(Steady(2, Seconds(10), Eight + Minutes(75), Eight + Hours(2))));
        var use = studio.Fuel("furnace-1", Eight, Eight + Hours(2));
        Assert.Equal(0.75, use.MeasuredShare, 12);
        Assert.Equal(3 * BaseFactor * GrossKilowattHours, use.EnergyKilowattHours, 9);
        Assert.Equal(0, use.EstimatedKilowattHours);
    }

    [Fact]
    public async Task A_meter_exchanged_loses_at_most_one_interval_and_says_so()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, i <= 30 ? 5000 + i * 0.1 : (i - 31) * 0.1)));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        Assert.Equal(1, use.Resets);
        Assert.Equal(5.9 * BaseFactor, use.BaseCubicMetres, 9);
        Assert.Equal(59 / 60.0, use.MeasuredShare, 9);
    }

    [Theory, InlineData(1), InlineData(2)]
    public async Task A_meter_that_dips_and_returns_adds_nothing(int readings)
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, i >= 20 && i < 20 + readings ? 12 : 5000 + i * 0.1)));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        Assert.Equal(6 * BaseFactor, use.BaseCubicMetres, 9);
        Assert.Equal((0, 1.0), (use.Resets, use.MeasuredShare));
    }

    [Fact]
    public async Task A_meter_of_five_digits_goes_on_from_nought()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("shop/meter", Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, (99_997.5 + i * 0.1) % 100_000)));
        var use = studio.Fuel("shop", Eight, Eight + Hours(1));
        Assert.Equal(6 * BaseFactor, use.BaseCubicMetres, 6);
        Assert.Equal(0, use.Resets);
    }

    [Fact]
    public async Task Electric_power_adds_up_to_energy_without_the_heating_value_of_gas()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("annealer-2/power", Every(Seconds(10), Eight, Eight + Hours(1)).Select(at => (at, 6 * (at - Eight).TotalHours)));
        var use = studio.Fuel("annealer-2", Eight, Eight + Hours(1));
        Assert.Equal((3.0, 0, 0, 0.90m), (Math.Round(use.EnergyKilowattHours, 9), use.BaseCubicMetres, use.CarbonDioxideKilograms, use.Cost));
    }

    [Fact]
    public async Task An_energy_counter_in_megajoule_counts_kilowatt_hours()
    {
        await using var studio = OpenStudio.Open();
        foreach (var (at, i) in Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, i)))
            await studio.Send("annealer-3/energy", $$"""{"value":{{3600 + i * 0.36}},"unit":"MJ","time":"{{at}}"}""", arrived: at);
        studio.Now = Eight + Hours(1);
        Assert.Equal(6, studio.Fuel("annealer-3", Eight, Eight + Hours(1)).EnergyKilowattHours, 9);
    }

    [Fact]
    public async Task A_nameplate_and_a_relay_give_an_estimate_that_is_not_called_measured()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("annealer-1/relay", (Eight, 1), (Eight + Minutes(15), 0), (Eight + Minutes(45), 1), (Eight + Minutes(60), 0));
        await studio.Send("glory-hole-1/valve", Every(Minutes(1), Eight, Eight + Hours(1)).Select((at, i) => (at, i < 30 ? 1.0 : 0)));
        var annealer = studio.Fuel("annealer-1", Eight, Eight + Hours(1));
        Assert.Equal((0, 4.0, 0, 1.20m), (annealer.EnergyKilowattHours, Math.Round(annealer.EstimatedKilowattHours, 9), annealer.MeasuredShare, annealer.Cost));
        var gloryHole = studio.Fuel("glory-hole-1", Eight, Eight + Hours(1));
        Assert.Equal(30, gloryHole.EstimatedKilowattHours, 9);
        // 0.18105 kg per kWh gross: natural gas, 40 CFR 98 table C-1.
        Assert.Equal(30 * 0.18105, gloryHole.CarbonDioxideKilograms, 9);
    }

    [Fact]
    public async Task A_new_price_begins_at_the_studio_s_midnight()
    {
        var configuration = SomeStudio.Configuration with
        {
            Prices = [new() { From = "2026-03-01", Energy = "electricity", PerKilowattHour = 0.30m }, new() { From = "2026-03-03", Energy = "electricity", PerKilowattHour = 0.50m }],
        };
        await using var studio = OpenStudio.Open(configuration);
        var midnight = new LocalDate(2026, 3, 3).AtStartOfDayInZone(studio.Plan.Zone).ToInstant();
        Assert.Equal(Instant.FromUtc(2026, 3, 2, 23, 0), midnight);
        await studio.Send("annealer-2/power", Steady(10, Seconds(10), midnight - Hours(1), midnight + Hours(1)));
        Assert.Equal(8.00m, studio.Fuel("annealer-2", midnight - Hours(1), midnight + Hours(1)).Cost);
        Assert.Equal([3.00m, 5.00m], studio.The<FuelBook>().Use(studio.Plan.Appliance("annealer-2")!, midnight - Hours(1), midnight + Hours(1), FuelStep.Day, studio.Now).Select(u => u.Cost!.Value));
        Assert.Equal([3.00m, 5.00m], studio.The<FuelBook>().Use(studio.Plan.Appliance("annealer-2")!, midnight - Hours(1), midnight + Hours(1), FuelStep.Hour, studio.Now).Select(u => u.Cost!.Value));
    }

    [Fact]
    public async Task Energy_without_a_price_has_no_cost_instead_of_a_wrong_one()
    {
        await using var studio = OpenStudio.Open(SomeStudio.Configuration with { Prices = [new() { From = "2026-03-03", Energy = "electricity", PerKilowattHour = 0.5m }] });
        await studio.Send("annealer-2/power", Steady(10, Seconds(10), Eight, Eight + Hours(1)));
        Assert.Null(studio.Fuel("annealer-2", Eight, Eight + Hours(1)).Cost);
    }

    // Days of the studio's zone are walked in local time and summed in UTC.
    [Theory]
    [InlineData("Europe/Berlin", 2026, 3, 29, 23)]
    [InlineData("Europe/Berlin", 2026, 10, 25, 25)]
    [InlineData("America/New_York", 2026, 11, 1, 25)]
    [InlineData("Asia/Kolkata", 2026, 3, 29, 24)]
    [InlineData("Australia/Lord_Howe", 2026, 4, 5, 24.5)]
    public async Task Practice_9_and_10_a_day_is_as_long_as_the_studio_s_clock_makes_it(string zone, int year, int month, int day, double hours)
    {
        var midnight = new LocalDate(year, month, day).AtStartOfDayInZone(DateTimeZoneProviders.Tzdb[zone]).ToInstant();
        await using var studio = OpenStudio.Open(SomeStudio.With("annealer-2", "power", c => c with { IntervalSeconds = 600 }) with { Zone = zone }, midnight - Hours(3));
        await studio.Send("annealer-2/power", Steady(2, Minutes(7), midnight - Hours(2), midnight + Hours(28)));
        await studio.Move();
        var days = studio.The<FuelBook>().Use(studio.Plan.Appliance("annealer-2")!, midnight - Hours(1), midnight + Hours(27), FuelStep.Day, studio.Now);
        Assert.Equal((midnight, midnight + Hours(hours)), (days[1].From, days[1].To));
        Assert.Equal(2 * hours, days[1].EnergyKilowattHours, 9);
        Assert.Equal(1, days[1].MeasuredShare, 9);
        Assert.Equal(28 * 2, days.Sum(d => d.EnergyKilowattHours), 9);
    }

    [Fact]
    public async Task A_price_begins_at_midnight_in_the_middle_of_an_hour_of_UTC()
    {
        var configuration = SomeStudio.Configuration with
        {
            Zone = "Asia/Kolkata", Currency = "INR",
            Prices = [new() { From = "2026-03-01", Energy = "electricity", PerKilowattHour = 8m }, new() { From = "2026-03-03", Energy = "electricity", PerKilowattHour = 10m }],
        };
        await using var studio = OpenStudio.Open(configuration);
        var midnight = Instant.FromUtc(2026, 3, 2, 18, 30);
        await studio.Send("annealer-2/power", Steady(2, Seconds(10), midnight - Minutes(30), midnight + Minutes(30)));
        Assert.Equal(18m, studio.Fuel("annealer-2", midnight - Minutes(30), midnight + Minutes(30)).Cost);
        Assert.Equal([8m, 10m], studio.The<FuelBook>().Use(studio.Plan.Appliance("annealer-2")!, midnight - Minutes(30), midnight + Minutes(30), FuelStep.Day, studio.Now).Select(u => u.Cost!.Value));
    }

    [Fact]
    public async Task A_day_whose_readings_are_gone_keeps_its_half_hours()
    {
        await using var studio = OpenStudio.Open(SomeStudio.With("annealer-2", "power", c => c with { IntervalSeconds = 600 }) with { Zone = "Asia/Kolkata" });
        var midnight = Instant.FromUtc(2026, 3, 2, 18, 30);
        await studio.Send("annealer-2/power", Steady(2, Minutes(10), midnight - Hours(2), midnight + Hours(26)));
        studio.Now += Days(100);
        await studio.Move();
        await studio.LetGo();
        Assert.Equal(0, studio.Scalar("SELECT (SELECT count(*) FROM reading) + (SELECT count(*) FROM arrival)"));
        Assert.Equal(48, studio.Fuel("annealer-2", midnight, midnight + Hours(24)).EnergyKilowattHours, 9);
    }

    [Fact]
    public async Task Time_that_has_not_passed_is_not_missing()
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("annealer-2/power", Steady(2, Seconds(10), Eight, Eight + Minutes(30)));
        var use = Assert.Single(studio.The<FuelBook>().Use(studio.Plan.Appliance("annealer-2")!, Eight, Eight + Hours(12), FuelStep.Day, studio.Now));
        Assert.Equal((Eight + Minutes(30), 1.0), (use.To, use.MeasuredShare));
    }
}
