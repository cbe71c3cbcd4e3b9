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
}
