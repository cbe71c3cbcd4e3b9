using FsCheck.Xunit;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using NodaTime;
using NodaTime.Text;
using Xunit;

namespace HotShop.Monitor.Tests.Money;

/// <summary>What holds for every price list and every use: random ones, made from a seed.</summary>
public sealed class LedgerProperties
{
    static readonly StudioGas gas = new(new GasOptions());
    static readonly string[] units = ["kWh", "GJ", "therm", "m3", "CCF", "MCF", "litre", "gallon", "kilogram"];

    /// <summary>Three months, of 28 to 31 days, with lists that change in between.</summary>
    static (IReadOnlyList<PriceOptions> Prices, List<DayShare> Shares, LocalDate First, LocalDate Last, int Digits) Case(int seed)
    {
        var random = new Random(seed);
        var first = new LocalDate(2026 + random.Next(4), 1 + random.Next(10), 1);
        var last = first.PlusMonths(3).PlusDays(-1 - random.Next(20));
        List<PriceOptions> prices = [.. Enum.GetValues<EnergyKind>().SelectMany(k => Enumerable.Range(0, 1 + random.Next(3)).Select(i => Prices(random, k, first.PlusDays(i * random.Next(40) - (i == 0 ? 1 : 0)))))];
        List<DayShare> shares = [];
        for (var day = first; day <= last; day = day.PlusDays(1))
            for (var i = random.Next(8); i > 0; i--)
            {
                var kilowattHours = random.NextDouble() * 900;
                var kind = (EnergyKind)random.Next(2);
                shares.Add(new DayShare(day, $"appliance-{i}", kind, (Origin)random.Next(3), (Purpose)random.Next(7), kilowattHours, kind == EnergyKind.Gas ? kilowattHours / 10.5 : 0, kind == EnergyKind.Gas ? kilowattHours / 10.9 : 0));
            }
        return (prices, shares, first, last, random.Next(4));
    }

    static PriceOptions Prices(Random random, EnergyKind kind, LocalDate from)
    {
        decimal Some(int most) => Math.Round((decimal)random.NextDouble() * most, 4);
        return new PriceOptions
        {
            From = LocalDatePattern.Iso.Format(from), Energy = kind == EnergyKind.Gas ? "gas" : "electricity", Unit = kind == EnergyKind.Gas ? units[random.Next(units.Length)] : "kWh",
            Blocks = [.. new[] { 10 + Some(500), 600 + Some(5000) }.Take(random.Next(3)).Select(u => new PriceBlockOptions { UpTo = u, Price = Some(2) }), new() { Price = Some(2) }],
            Riders = [.. Enumerable.Range(0, random.Next(3)).Select(i => new RiderOptions { Name = $"rider {i}", PerUnit = Some(1) / 10 - 0.02m })],
            Taxes = [.. Enumerable.Range(0, random.Next(3)).Select(i => new TaxOptions { Name = $"tax {i}", Percent = Some(20), On = random.Next(2) == 0 ? "subtotal" : "subtotal-and-taxes" })],
            StandingChargePerDay = random.Next(2) * Some(1), StandingChargePerMonth = random.Next(2) * Some(50),
        };
    }

    static IReadOnlyList<DayCharge> Charges(int seed, Func<List<DayShare>, IEnumerable<DayShare>>? order = null)
    {
        var (prices, shares, first, last, digits) = Case(seed);
        return new Ledger(new PriceList(prices, gas), gas, digits).Of(order is null ? shares : order(shares), first, last);
    }

    static decimal Unit(int seed) => Case(seed).Digits switch { 0 => 1, 1 => 0.1m, 2 => 0.01m, _ => 0.001m };

    [Property(MaxTest = 100)]
    public void Every_part_is_whole_in_the_smallest_unit_and_all_parts_make_the_bill(int seed)
    {
        var unit = Unit(seed);
        foreach (var bill in Charges(seed).Where(c => c.Amounts is not null).GroupBy(c => (c.Kind, c.Day.ToYearMonth())))
        {
            Assert.All(bill, c => Assert.All([.. c.Amounts!, c.Standing], a => Assert.Equal(0, a % unit)));
            // The lines are the other way round to the same total: by price, not by appliance.
            var exact = bill.Sum(c => c.Lines.Sum(l => l.Exact));
            Assert.InRange(Math.Abs(bill.Sum(c => c.Total!.Value) - exact), 0, unit / 2 + 1e-12m);
        }
    }

    [Property(MaxTest = 100)]
    public void A_day_is_off_its_exact_cost_by_less_than_one_smallest_unit(int seed)
    {
        var unit = Unit(seed);
        Assert.All(Charges(seed).Where(c => c.Amounts is not null), c => Assert.InRange(Math.Abs(c.Total!.Value - c.Lines.Sum(l => l.Exact)), 0, unit));
    }

    [Property(MaxTest = 60)]
    public void The_order_in_which_appliances_are_listed_changes_no_day(int seed)
    {
        var (given, turned) = (Charges(seed), Charges(seed, s => s.AsEnumerable().Reverse()));
        Assert.Equal(given.Select(c => (c.Kind, c.Day, c.Total)), turned.Select(c => (c.Kind, c.Day, c.Total)));
    }

    [Property(MaxTest = 100)]
    public void Shares_of_any_amounts_make_the_total_and_none_is_off_by_a_unit_or_more(int[] hundredthsOfCents)
    {
        if (hundredthsOfCents is null or { Length: 0 }) return;
        var exact = hundredthsOfCents.Select(h => h / 10_000m).ToArray();
        var total = LargestRemainder.Round(exact.Sum(), 2);
        var parts = LargestRemainder.Share(exact, total, 2);
        Assert.Equal(total, parts.Sum());
        Assert.All(parts.Zip(exact), p => Assert.True(Math.Abs(p.First - p.Second) < 0.01m, $"{p}"));
    }
}
