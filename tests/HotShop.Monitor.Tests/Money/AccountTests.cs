using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using NodaTime.Text;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Money;

/// <summary>The owner's account, from readings to amounts, against hand calculations.</summary>
public sealed class AccountTests
{
    /// <summary>One annealer that draws 2 kW, and a furnace that burns 1 m³/h at 10 kWh/m³ and base conditions; read once an hour.</summary>
    internal static StudioConfiguration Steady(string zone = "Europe/Berlin", string currency = "EUR", params PriceOptions[] prices) => SomeStudio.Configuration with
    {
        Zone = zone, Currency = currency, Prices = prices,
        Gas = new() { GrossKilowattHoursPerCubicMetre = 10, LineGaugeMillibar = 0, LineCelsius = 15 },
        Appliances =
        [
            new() { Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", Channels = [SomeStudio.Channel("gas-flow", "gas-flow", 3600)], Pot = new() { DiameterCentimetres = 46, HeightCentimetres = 45 } },
            new() { Id = "glory-hole-1", Name = "Glory hole", Kind = "glory-hole", Mode = "off", Channels = [SomeStudio.Channel("gas-flow", "gas-flow", 3600)] },
            new() { Id = "annealer-1", Name = "Annealer 1", Kind = "annealer", Channels = [SomeStudio.Channel("power", "power", 3600)] },
        ],
    };

    internal static readonly PriceOptions[] Plain =
    [
        new() { From = "2020-01-01", Energy = "gas", PerKilowattHour = 0.10m },
        new() { From = "2020-01-01", Energy = "electricity", PerKilowattHour = 0.30m },
    ];

    internal static async Task<OpenStudio> Filled(StudioConfiguration configuration, Instant from, Instant to)
    {
        var studio = OpenStudio.Open(configuration, from);
        foreach (var (channel, value) in new[] { ("furnace-1/gas-flow", 1.0), ("glory-hole-1/gas-flow", 0.5), ("annealer-1/power", 2.0) })
            await studio.Send(channel, Times.Steady(value, Hours(1), from, to));
        studio.Now = to;
        await studio.Move();
        return studio;
    }

    static Instant Midnight(OpenStudio studio, string day) => studio.Plan.Zone.AtStartOfDay(LocalDatePattern.Iso.Parse(day).Value).ToInstant();

    internal static LocalDate Day(string day) => LocalDatePattern.Iso.Parse(day).Value;

    // A month of the clock change has 743 or 745 hours; 29 days in February 2028.
    [Theory]
    [InlineData("2026-03-01", "2026-03-31", 743)]
    [InlineData("2026-10-01", "2026-10-31", 745)]
    [InlineData("2028-02-01", "2028-02-29", 696)]
    public async Task A_month_costs_its_hours(string first, string last, int hours)
    {
        var configuration = Steady(prices: Plain);
        var zone = DateTimeZoneProviders.Tzdb[configuration.Zone];
        var (from, to) = (zone.AtStartOfDay(Day(first)).ToInstant(), zone.AtStartOfDay(Day(last).PlusDays(1)).ToInstant());
        await using var studio = await Filled(configuration, from - Hours(2), to + Hours(2));
        var account = studio.The<AccountBook>().Of(Day(first), Day(last), studio.Now);
        // 1 and half a m³/h at 10 kWh/m³ and 0.10; 2 kW at 0.30.
        Assert.Equal(hours * (1.5m + 0.6m), account.Cost!.Value);
        Assert.Equal((hours, hours * 17.0), (account.Days.Sum(d => d.Hours), Math.Round(account.EnergyKwh.Value, 6)));
        ShouldAddUp(account);
        Assert.Equal((SpanKind.Month, false, 1.0), (account.Span.Kind, account.Span.IsUnderWay, Math.Round(account.MeasuredShare.Value, 9)));
    }

    // The old meter leaves at 48,120 m³ and the new one begins at 3: 120 and 84 m³ passed, and the seam costs nothing.
    [Fact]
    public async Task A_meter_that_is_exchanged_in_the_month_loses_nothing_and_the_parts_make_the_total()
    {
        var configuration = Steady(prices: [new() { From = "2020-01-01", Energy = "gas", PerKilowattHour = 0.1037m, StandingChargePerMonth = 14.5m, Taxes = [new() { Name = "VAT", Percent = 19 }] }]) with
        {
            Appliances =
            [
                new() { Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", NameplateKilowatts = 30, Channels = [] },
                new() { Id = "shop", Name = "Shop", Kind = "shop", Channels = [SomeStudio.Channel("meter", "gas-volume") with { Reports = "typed" }] },
            ],
        };
        var from = DateTimeZoneProviders.Tzdb[configuration.Zone].AtStartOfDay(Day("2026-03-01")).ToInstant();
        await using var studio = OpenStudio.Open(configuration, from);
        await Read(0, 48_000);
        await Read(12, 48_120, ""","exchange":true,"newMeterReading":3""");
        await Read(31, 87);
        var account = studio.The<AccountBook>().Of(Day("2026-03-01"), Day("2026-03-31"), studio.Now);
        Assert.Equal(204, account.GasCubicMetres.Value, 4);
        // 204 m³ at 10 kWh/m³ and 0.1037, a month's standing charge, 19 % on both: 2,040 × 0.1037 = 211.548; 226.048 × 1.19 = 268.997.
        Assert.Equal(269.00m, account.Cost!.Value);
        ShouldAddUp(account);

        Task Read(int day, int register, string more = "")
        {
            studio.Now = from + Days(day) - (day == 31 ? Hours(1) : Duration.Zero);
            return studio.Send("shop/log", $$"""{"entry":"meter-reading","reading":{{register}},"unit":"m3"{{more}}}""");
        }
    }

    /// <summary>Whichever way the account is cut, the parts make the cost.</summary>
    internal static void ShouldAddUp(Account account)
    {
        var cost = account.Cost!.Value;
        Assert.Equal(cost, account.Days.Sum(d => d.Amount?.Value ?? d.Parts.Sum(p => p.Amount?.Value ?? 0) + d.Standing.Value));
        Assert.Equal(cost, account.Days.Sum(d => d.Standing.Value + d.Parts.Sum(p => p.Amount?.Value ?? 0)));
        Assert.Equal(cost, account.Lines.Sum(l => l.Amount.Value));
        Assert.Equal(cost, account.Where.Sum(w => w.Amount?.Value ?? 0));
        if (account.Months.Count > 0) Assert.Equal(cost, account.Months.Sum(m => m.Amount?.Value ?? 0));
        if (account.MissingPrices.Count == 0) Assert.Equal(1, account.Where.Sum(w => w.Share.Value), 9);
    }

    [Fact]
    public async Task Standing_charge_tax_and_a_price_change_are_in_every_cut_of_the_account_and_a_day_costs_the_same_on_every_page()
    {
        PriceOptions[] prices =
        [
            new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1037m, StandingChargePerMonth = 14.5m, Taxes = [new() { Name = "VAT", Percent = 19 }] },
            new() { From = "2026-03-17", Energy = "gas", PerKilowattHour = 0.1211m, StandingChargePerMonth = 14.5m, Taxes = [new() { Name = "VAT", Percent = 19 }] },
            new() { From = "2026-01-01", Energy = "electricity", PerKilowattHour = 0.2899m, StandingChargePerDay = 0.333m },
        ];
        var zone = DateTimeZoneProviders.Tzdb["Europe/Berlin"];
        await using var studio = await Filled(Steady(prices: prices), zone.AtStartOfDay(Day("2026-03-01")).ToInstant(), zone.AtStartOfDay(Day("2026-04-03")).ToInstant());
        var book = studio.The<AccountBook>();
        var month = book.Of(Day("2026-03-01"), Day("2026-03-31"), studio.Now);
        ShouldAddUp(month);
        // 16 days of 24 h and 14 of 24 h and one of 23 h, at 15 kWh/h of gas and 2 kWh/h of electricity: two bills, each rounded once.
        var gas = (384 * 15 * 0.1037m + 359 * 15 * 0.1211m + 14.5m) * 1.19m;
        var electricity = 743 * 2 * 0.2899m + 31 * 0.333m;
        Assert.Equal(Math.Round(gas, 2) + Math.Round(electricity, 2), month.Cost!.Value);
        Assert.Equal(["17"], month.Days.Where(d => d.PriceChanges).Select(d => d.Day.Day.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        var tax = month.Lines.Where(l => l.LineKind == LineKind.Tax).ToList();
        Assert.Equal(["19 % of", "19 % of"], tax.Select(l => l.Calculation[..7]));
        var (week, day) = (book.Of(Day("2026-03-16"), Day("2026-03-22"), studio.Now), book.Of(Day("2026-03-18"), Day("2026-03-18"), studio.Now));
        ShouldAddUp(week);
        ShouldAddUp(day);
        Assert.Equal(month.Days.Where(d => d.Day >= week.Span.First && d.Day <= week.Span.Last).Select(d => d.Amount!.Text), week.Days.Select(d => d.Amount!.Text));
        Assert.Equal(day.Cost!.Value, month.Days[17].Amount!.Value);
        var year = book.Of(Day("2026-01-01"), Day("2026-12-31"), studio.Now);
        ShouldAddUp(year);
        Assert.Equal(month.Cost.Value, Assert.Single(year.Months, m => m.First == Day("2026-03-01")).Amount!.Value);
    }

    [Fact]
    public async Task Days_without_a_price_are_named_and_are_not_free()
    {
        var configuration = Steady(prices: [Plain[0] with { From = "2026-03-05" }, Plain[1]]);
        await using var studio = await Filled(configuration, Instant.FromUtc(2026, 2, 28, 22, 0), Instant.FromUtc(2026, 3, 8, 23, 0));
        var account = studio.The<AccountBook>().Of(Day("2026-03-01"), Day("2026-03-08"), studio.Now);
        var missing = Assert.Single(account.MissingPrices);
        Assert.Equal((EnergyKind.Gas, Day("2026-03-01"), Day("2026-03-04"), 4 * 24 * 15.0), (missing.Kind, missing.First, missing.Last, Math.Round(missing.EnergyKwh.Value, 6)));
        Assert.Contains("1 Mar 2026 to 4 Mar 2026", missing.Text, StringComparison.Ordinal);
        Assert.Equal([true, true, true, true, false], account.Days.Take(5).Select(d => d.Amount is null));
        Assert.Equal(8 * 24 * 0.6m + 4 * 24 * 1.5m, account.Cost!.Value);
        ShouldAddUp(account);
    }

    [Fact]
    public async Task Where_it_went_follows_the_modes_that_were_in_force()
    {
        await using var studio = await Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 1, 22, 0), Instant.FromUtc(2026, 3, 2, 23, 0));
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"charging","time":"2026-03-02T05:00:00Z"}""");
        await studio.Send("furnace-1/log", """{"entry":"mode","mode":"holding","time":"2026-03-02T08:30:00Z"}""");
        await studio.Send("glory-hole-1/log", """{"entry":"mode","mode":"heat-up","time":"2026-03-02T07:00:00Z"}""");
        await studio.Send("glory-hole-1/log", """{"entry":"mode","mode":"working","time":"2026-03-02T08:00:00Z"}""");
        await studio.Send("glory-hole-1/log", """{"entry":"mode","mode":"off","time":"2026-03-02T16:00:00Z"}""");
        var account = studio.The<AccountBook>().Of(Day("2026-03-02"), Day("2026-03-02"), studio.Now);
        double Of(string appliance, Purpose purpose) => Math.Round(account.Where.Where(w => w.Appliance == appliance && w.Purpose == purpose).Sum(w => w.EnergyKwh.Value), 6);
        Assert.Equal((35.0, 205.0), (Of("furnace-1", Purpose.Melting), Of("furnace-1", Purpose.Holding)));
        Assert.Equal((5.0, 40.0, 75.0), (Of("glory-hole-1", Purpose.HeatUp), Of("glory-hole-1", Purpose.Working), Of("glory-hole-1", Purpose.Idle)));
        Assert.Equal(48.0, Of("annealer-1", Purpose.Annealing));
        // 120 kWh at 0.10 in 8 hours of work.
        Assert.Equal((8.0, 1.50m), (account.PerUnit.PerGloryHoleHour!.Hours.Value, account.PerUnit.PerGloryHoleHour.Cost!.Value));
    }

    [Fact]
    public async Task A_kilogram_costs_the_furnace_s_energy_over_the_glass_that_was_melted()
    {
        await using var studio = await Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 1, 22, 0), Instant.FromUtc(2026, 3, 2, 23, 0));
        await studio.Send("furnace-1/log", """{"entry":"charge","material":"cullet","massKg":48,"time":"2026-03-02T05:00:00Z"}""");
        var perKilogram = studio.The<AccountBook>().Of(Day("2026-03-02"), Day("2026-03-02"), studio.Now).PerUnit.PerKilogram!;
        // 240 kWh at 0.10 over 48 kg of cullet.
        Assert.Equal((48.0, 0.50m, 5.0), (perKilogram.GlassKilograms.Value, perKilogram.Cost!.Value, Math.Round(perKilogram.EnergyKwhPerKilogram.Value, 6)));
        Assert.InRange(5.0, perKilogram.EnergyKwhPerKilogram.Low95, perKilogram.EnergyKwhPerKilogram.High95);
    }

    [Fact]
    public async Task Carbon_dioxide_says_which_factor_it_was_made_with_and_what_it_leaves_out()
    {
        await using var studio = await Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 1, 22, 0), Instant.FromUtc(2026, 3, 2, 23, 0));
        var carbonDioxide = studio.The<AccountBook>().Of(Day("2026-03-02"), Day("2026-03-02"), studio.Now).CarbonDioxide;
        // 360 kWh at 53.06 kg/MMBtu = 0.18105 kg/kWh (40 CFR 98 table C-1).
        Assert.Equal(360 * 0.18105, carbonDioxide.Kilograms.Value, 6);
        Assert.Equal(["gas: 0,18105 kg/kWh (40 CFR 98 table C-1, gross, 2016)", "electricity is left out: write its factor, source and year under 'electricity'"], carbonDioxide.Sources.Select(s => s.Text));
    }

    [Fact]
    public async Task Days_that_nobody_measured_are_named_have_no_parts_and_make_no_hour_cheap()
    {
        await using var studio = await Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 4, 22, 0), Instant.FromUtc(2026, 3, 8, 23, 0));
        var account = studio.The<AccountBook>().Of(Day("2026-03-02"), Day("2026-03-08"), studio.Now);
        Assert.Equal(("2 Mar 2026 to 4 Mar 2026", 3), Assert.Single(account.Unmeasured) is var gap ? (gap.Text, gap.Days) : default);
        Assert.All(account.Days.Take(2), d => Assert.Empty(d.Parts));
        // 1.5 m³/h at 10 kWh/m³ and 0.10, and 2 kW at 0.30.
        Assert.Equal((2.10m, 50.40m), (account.PerUnit.PerHour!.Value, account.PerUnit.PerDay!.Value));
        var table = System.Text.Encoding.UTF8.GetString(HotShop.Monitor.Reports.AccountCsv.Of(account, studio.The<AccountBook>().Format));
        Assert.Contains("gap;2026-03-02;;;;;;;;;0,0", table, StringComparison.Ordinal);
        Assert.DoesNotContain("part;2026-03-02", table, StringComparison.Ordinal);
    }
}
