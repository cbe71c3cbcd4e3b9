using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Money;

/// <summary>From use to money, against printed bills and hand calculations.</summary>
public sealed class LedgerTests
{
    static readonly LocalDate First = new(2026, 4, 1), Last = new(2026, 4, 30);

    static IReadOnlyList<DayCharge> Bill(PriceOptions prices, IEnumerable<DayShare> shares, int digits = 2, LocalDate? first = null, LocalDate? last = null) =>
        Bill([prices], shares, digits, first, last);

    static IReadOnlyList<DayCharge> Bill(IReadOnlyList<PriceOptions> prices, IEnumerable<DayShare> shares, int digits = 2, LocalDate? first = null, LocalDate? last = null)
    {
        var gas = new StudioGas(new GasOptions());
        return new Ledger(new PriceList(prices, gas), gas, digits).Of(shares, first ?? First, last ?? Last);
    }

    static decimal Total(IEnumerable<DayCharge> charges) => charges.Sum(c => c.Total ?? 0);

    internal static DayShare Gas(LocalDate day, double kilowattHours = 0, double baseCubicMetres = 0, double lineCubicMetres = 0, string appliance = "furnace-1", Purpose purpose = Purpose.Holding) =>
        new(day, appliance, EnergyKind.Gas, Origin.Measured, purpose, kilowattHours, baseCubicMetres, lineCubicMetres);

    /// <summary>A commercial gas rate in three blocks, figure 22-1 and text of a handbook of combined heat and power, chapter on rates (author from memory: N. Petchers).</summary>
    static readonly PriceOptions threeBlocks = new()
    {
        From = "2026-01-01", Energy = "gas", Unit = "CCF",
        Blocks = [new() { UpTo = 10_000, Price = 0.4374m }, new() { UpTo = 30_000, Price = 0.4222m }, new() { Price = 0.4100m }],
        Riders = [new() { Name = "purchased gas adjustment", PerUnit = -0.0097m }, new() { Name = "demand side management", PerUnit = 0.0020m }],
        StandingChargePerMonth = 80, Taxes = [new() { Name = "tax", Percent = 5.8m }],
    };

    const double CubicMetresPerCcf = 2.8316846592;

    [Theory, InlineData(1), InlineData(30)]
    public void A_month_of_47_500_CCF_in_three_blocks_costs_what_the_printed_bill_says(int days)
    {
        var charges = Bill(threeBlocks, Enumerable.Range(0, days).Select(i => Gas(First.PlusDays(i), baseCubicMetres: 47_500 * CubicMetresPerCcf / days)));
        Assert.Equal(20_850.27m, Total(charges));
        var lines = charges.SelectMany(c => c.Lines).GroupBy(l => l.Key).ToDictionary(g => (g.Key.LineKind, g.Key.Order), g => g.Sum(l => l.Exact));
        decimal Net(int block, decimal units) => lines[(LineKind.Energy, block)] + units * -0.0077m;
        Assert.Equal([4_297.00m, 8_290.00m, 7_040.25m], [Math.Round(Net(0, 10_000), 6), Math.Round(Net(1, 20_000), 6), Math.Round(Net(2, 17_500), 6)]);
        Assert.Equal(1_143.02m, Math.Round(lines[(LineKind.Tax, 0)], 2));
    }

    [Fact]
    public void A_month_without_use_pays_its_standing_charge_and_the_tax_on_it() => Assert.Equal(84.64m, Total(Bill(threeBlocks, [])));

    // UK form: volume × 1.02264 × heating value / 3.6, nothing rounded in between. 2 m³ at 39.3 MJ/m³ are 22.33 kWh (a supplier's help page, which prints 22).
    [Theory, InlineData(2, 39.3, 22.33), InlineData(46, 39.3, 513.54)]
    public void The_bill_s_own_factors_make_its_kilowatt_hours(double cubicMetres, double megajoules, double kilowattHours)
    {
        var tariff = new Tariff(new PriceOptions { From = "2026-01-01", Energy = "gas", Unit = "kWh", Price = 0.0235m, BillFactor = new() { VolumeFactor = 1.02264m, HeatingValue = (decimal)megajoules } });
        Assert.Equal(kilowattHours, (double)tariff.Quantity(-1, -1, cubicMetres, new StudioGas(new GasOptions())), 0.005);
    }

    [Fact]
    public void Rounding_at_each_step_loses_two_hundredths_of_a_kilowatt_hour_and_so_is_left_to_the_end()
    {
        // 46 m³ at 39.3 MJ/m³: a customer who rounded the volume first had 513.52 kWh (published query); one rounding at the end gives 513.54, at 2.35 p 12.07 pounds.
        Assert.Equal((513.52m, 513.54m), (Math.Round(Math.Round(46 * 1.02264m, 2) * 39.3m / 3.6m, 2), Math.Round(46 * 1.02264m * 39.3m / 3.6m, 2)));
        var charges = Bill(new PriceOptions { From = "2026-01-01", Energy = "gas", Unit = "kWh", Price = 0.0235m, BillFactor = new() { VolumeFactor = 1.02264m, HeatingValue = 39.3m } },
            Enumerable.Range(0, 23).Select(i => Gas(First.PlusDays(i), lineCubicMetres: 2)));
        Assert.Equal(12.07m, Total(charges));
    }

    [Fact]
    public void A_bill_in_therms_multiplies_hundreds_of_cubic_feet_by_pressure_factor_and_therm_factor()
    {
        // 123 CCF × 1.1115 × 1.0355 = 141.57 therm = 4,149 kWh: the form of United States bills, computed by hand.
        var tariff = new Tariff(new PriceOptions { From = "2026-01-01", Energy = "gas", Unit = "therm", Price = 1.05m, BillFactor = new() { VolumeFactor = 1.1115m, HeatingValue = 1.0355m, HeatingValueUnit = "therm/CCF" } });
        var therms = tariff.Quantity(0, 0, 123 * CubicMetresPerCcf, new StudioGas(new GasOptions()));
        Assert.Equal(141.57, (double)therms, 0.005);
        Assert.Equal(4_149, (double)therms * BilledUnit.Therm.KilowattHours()!.Value, 0.5);
    }

    // Therm of 100,000 Btu (IT): 29.307107 kWh. A barrel of propane is 3.84 MMBtu (40 CFR 98 table NN-1), a gallon a 42nd of it: 91,429 Btu = 26.80 kWh; a litre 7.08 kWh.
    [Theory, InlineData("therm", 29.307107, 0.000001), InlineData("dekatherm", 293.07107, 0.00001), InlineData("GJ", 277.7778, 0.0001), InlineData("gallon", 26.80, 0.005), InlineData("litre", 7.08, 0.005), InlineData("kilogram", 13.98, 0.005)]
    public void A_unit_of_energy_or_of_propane_has_its_kilowatt_hours(string unit, double kilowattHours, double within) =>
        Assert.Equal(kilowattHours, BilledUnits.Parse(unit)!.Value.KilowattHours()!.Value, within);

    [Fact]
    public void A_price_change_in_the_middle_of_a_month_holds_from_its_day()
    {
        PriceOptions[] prices = [new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.10m }, new() { From = "2026-04-16", Energy = "gas", PerKilowattHour = 0.15m }];
        var charges = Bill(prices, Enumerable.Range(0, 30).Select(i => Gas(First.PlusDays(i), 100)));
        Assert.Equal(15 * 10.00m + 15 * 15.00m, Total(charges));
        Assert.Equal([10.00m, 15.00m], [charges[14].Total!.Value, charges[15].Total!.Value]);
    }

    [Fact]
    public void Blocks_go_on_counting_when_a_new_list_in_another_unit_begins_in_mid_month()
    {
        PriceOptions[] prices =
        [
            new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.10m },
            new() { From = "2026-04-16", Energy = "gas", Unit = "GJ", Blocks = [new() { UpTo = 5.4m, Price = 20m }, new() { Price = 10m }] },
        ];
        // 1500 kWh are used by the 15th: 5.4 GJ, so all that follows falls into the second block. 1500 kWh more are 5.4 GJ at 10.
        Assert.Equal(150m + 54m, Total(Bill(prices, Enumerable.Range(0, 30).Select(i => Gas(First.PlusDays(i), 100)))));
    }

    [Fact]
    public void A_tax_on_taxes_is_taken_on_the_subtotal_and_the_taxes_before_it()
    {
        var prices = new PriceOptions { From = "2026-01-01", Energy = "gas", PerKilowattHour = 1m, Taxes = [new() { Name = "first", Percent = 5 }, new() { Name = "second", Percent = 10, On = "subtotal-and-taxes" }] };
        // 100 + 5 + 10.50.
        Assert.Equal(115.50m, Total(Bill(prices, [Gas(First, 100)])));
    }

    [Theory, InlineData("2028-02-01", 29), InlineData("2026-02-01", 28), InlineData("2026-03-01", 31)]
    public void A_month_s_standing_charge_is_paid_in_full_by_its_days_however_many(string month, int days)
    {
        var first = NodaTime.Text.LocalDatePattern.Iso.Parse(month).Value;
        var charges = Bill(new PriceOptions { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1m, StandingChargePerMonth = 17.77m }, [], first: first, last: first.PlusDays(days - 1));
        Assert.Equal((days, 17.77m), (charges.Count(c => c.Kind == EnergyKind.Gas), Total(charges)));
        Assert.All(charges.Where(c => c.Kind == EnergyKind.Gas), c => Assert.InRange(c.Total!.Value, 17.77m / days - 0.01m, 17.77m / days + 0.01m));
    }

    [Fact]
    public void A_standing_charge_a_day_is_paid_for_the_days_that_have_begun() =>
        Assert.Equal(12 * 0.35m, Total(Bill(new PriceOptions { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1m, StandingChargePerDay = 0.35m }, [], last: First.PlusDays(11))));

    [Fact]
    public void Days_before_the_first_price_cost_nothing_known_instead_of_nothing()
    {
        var charges = Bill(new PriceOptions { From = "2026-04-03", Energy = "gas", PerKilowattHour = 0.1m }, Enumerable.Range(0, 4).Select(i => Gas(First.PlusDays(i), 100)));
        Assert.Equal([null, null, 10.00m, 10.00m], charges.Take(4).Select(c => c.Total));
    }

    [Theory, InlineData(0, "1235"), InlineData(2, "1234.57"), InlineData(3, "1234.568")]
    public void A_bill_is_rounded_once_to_the_smallest_unit_of_its_currency(int digits, string total) =>
        Assert.Equal(decimal.Parse(total, System.Globalization.CultureInfo.InvariantCulture), Total(Bill(new PriceOptions { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1m }, [Gas(First, 12_345.678)], digits)));
}
