using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Money.AccountTests;

namespace HotShop.Monitor.Tests.Money;

public sealed class BillTests
{
    static readonly BillRow gas = new("b-1", "gas", "2026-03-02", "2026-03-08", "2520", "kWh", null, "252.00", "meter read by the supplier", "office", null);

    static string Problem(BillRow row) => BillForm.Check(row, new LocalDate(2026, 4, 1), () => "new").Problem ?? "";

    public static TheoryData<string, BillRow> Wrong => new()
    {
        { "'energy' is 'oil': write gas or electricity", gas with { Energy = "oil" } },
        { "'energy' is missing", gas with { Energy = " " } },
        { "'first' is '1.3.2026': write a day like 2026-10-01", gas with { First = "1.3.2026" } },
        { "'last' is before 'first'", gas with { Last = "2026-03-01" } },
        { "'last' is 2026-04-02, which is still to come", gas with { Last = "2026-04-02" } },
        { "the bill covers more than 800 days", gas with { First = "2020-03-02" } },
        { "'quantity' is '2.520,0': write a number like 1843.20", gas with { Quantity = "2.520,0" } },
        { "'quantity' is missing", gas with { Quantity = null } },
        { "'quantity' is below zero", gas with { Quantity = "-3" } },
        { "'unit' is 'buckets': write one of kWh", gas with { Unit = "buckets" } },
        { "electricity is not counted in CCF", gas with { Energy = "electricity", Unit = "CCF" } },
        { "'amount' is '1e5'", gas with { Amount = "1e5" } },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void A_bill_that_cannot_be_one_is_refused_with_what_to_write(string says, BillRow row) => Assert.Contains(says, Problem(row), StringComparison.Ordinal);

    [Fact] public void A_whole_bill_is_taken() => Assert.Equal("", Problem(gas));

    static Task<OpenStudio> AWeek() => Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 1, 22, 0), Instant.FromUtc(2026, 3, 9, 2, 0));

    static async Task<BillComparison> Beside(OpenStudio studio, BillRow row)
    {
        var result = await studio.The<BillBook>().Add(row, studio.Now, CancellationToken.None);
        Assert.Null(result.Refusal);
        return Assert.Single(studio.The<AccountBook>().Bills(Day("2026-03-01"), Day("2026-03-31"), studio.Now), b => b.Id == row.Id);
    }

    // Seven days of 24 h at 15 kWh/h are 2,520 kWh and 252.00 at 0.10.
    [Fact]
    public async Task A_bill_that_the_meters_agree_with_says_so()
    {
        await using var studio = await AWeek();
        var bill = await Beside(studio, gas with { Quantity = "2530" });
        Assert.Equal((2530.0, 2520.0, true, false), (bill.EnergyKwh.Value, Math.Round(bill.MetersKwh!.Value, 6), bill.IsWithinMeters, bill.IsNotExplained));
        Assert.Equal((252.00m, 252.00m, -10.0), (bill.Amount!.Value.Value, bill.MetersAmount!.Value, Math.Round(bill.EnergyDifferenceKwh!.Value, 6)));
        Assert.StartsWith("agrees", bill.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bill_far_from_the_meters_is_not_explained()
    {
        await using var studio = await AWeek();
        var bill = await Beside(studio, gas with { Quantity = "2900" });
        Assert.Equal((false, true), (bill.IsWithinMeters, bill.IsNotExplained));
        Assert.Equal(-380 / 2900.0, bill.DifferenceShare!.Value, 9);
    }

    // 10 kWh/m³ at base conditions: 252 m³ = 8,899.3 ft³ = 88.99 CCF.
    [Theory, InlineData("252", "m3"), InlineData("88.9930", "CCF"), InlineData("85.9859", "therm"), InlineData("9.072", "GJ")]
    public async Task A_bill_in_any_unit_is_compared_in_kilowatt_hours(string quantity, string unit)
    {
        await using var studio = await AWeek();
        Assert.Equal(2520, (await Beside(studio, gas with { Quantity = quantity, Unit = unit })).EnergyKwh.Value, 0.1);
    }

    [Fact]
    public async Task A_bill_of_days_that_nobody_measured_is_not_judged()
    {
        await using var studio = await AWeek();
        var bill = await Beside(studio, gas with { First = "2026-02-20", Last = "2026-03-08" });
        Assert.Null(bill.IsWithinMeters);
        Assert.False(bill.IsNotExplained);
        Assert.Contains("too little to compare", bill.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_bill_twice_is_one_and_a_correction_takes_its_place()
    {
        await using var studio = await AWeek();
        var bills = studio.The<BillBook>();
        Assert.True((await bills.Add(gas, studio.Now, CancellationToken.None)).IsNew);
        Assert.False((await bills.Add(gas, studio.Now, CancellationToken.None)).IsNew);
        Assert.Contains("there is another bill 'b-1'", (await bills.Add(gas with { Quantity = "1" }, studio.Now, CancellationToken.None)).Refusal, StringComparison.Ordinal);
        Assert.Contains("there is no bill 'b-9'", (await bills.Add(gas with { Id = "b-2", Corrects = "b-9" }, studio.Now, CancellationToken.None)).Refusal, StringComparison.Ordinal);
        await bills.Add(gas with { Id = "b-2", Quantity = "2525.5", Corrects = "b-1" }, studio.Now, CancellationToken.None);
        Assert.Equal(("b-2", 2525.5m), Assert.Single(bills.Touching(Day("2026-03-08"), Day("2026-03-20"))) is var b ? (b.Id, b.Quantity!.Value) : default);
        await bills.Add(gas with { Id = "b-3", Quantity = null, Corrects = "b-2" }, studio.Now, CancellationToken.None);
        Assert.Empty(bills.Touching(Day("2026-03-01"), Day("2026-03-20")));
        // What an export writes can be imported again, to the last digit.
        Assert.All(bills.All(), kept => Assert.Equal(kept, BillForm.Check(BillBook.Row(kept), Day("2026-03-31"), () => "new").Bill));
        Assert.Equal(3, bills.All().Count);
    }
}
