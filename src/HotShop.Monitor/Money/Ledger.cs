using HotShop.Monitor.Fuel;
using NodaTime;

namespace HotShop.Monitor.Money;

public enum LineKind { Energy, Rider, Standing, Tax }

/// <summary>What makes a line of a bill: the same line of two days is one line.</summary>
/// <param name="Order">Its place among the lines of its kind.</param>
/// <param name="PerUnit">Price of one unit; percent for a tax; null for a standing charge.</param>
sealed record LineKey(EnergyKind Kind, LocalDate PricesFrom, int Order, LineKind LineKind, string Name, string Unit, decimal? PerUnit);

/// <summary>A line's share of one day: quantity (units; the subtotal for a tax; days for a standing charge) and exact amount.</summary>
sealed record DayLine(LineKey Key, decimal Quantity, decimal Exact);

/// <summary>What one kind of energy cost on one day, in whole smallest units, taxes included in every part.</summary>
/// <param name="Amounts">Of the day's shares, in their order; null where no price list was in force.</param>
/// <param name="Standing">The day's part of the standing charge.</param>
/// <param name="PerKilowattHour">What a kWh cost on this day, not rounded; null without a price or without use.</param>
sealed record DayCharge(
    LocalDate Day, EnergyKind Kind, IReadOnlyList<DayShare> Shares, IReadOnlyList<decimal>? Amounts, decimal Standing, IReadOnlyList<DayLine> Lines, decimal? PerKilowattHour)
{
    public decimal? Total => Amounts is null ? null : Amounts.Sum() + Standing;
}

/// <summary>
/// From use to money. Each kind of energy has one bill a calendar month, and each bill is rounded once, to the currency's smallest unit; its days and their
/// parts are then shares of that, by largest remainder. So a day costs the same on the day's, the month's and the year's page, and parts always make the total.
/// </summary>
sealed class Ledger(PriceList prices, StudioGas gas, int digits)
{
    /// <param name="shares">Of whole months up to the last day: blocks count from a month's first.</param>
    /// <param name="first">First of a month.</param>
    /// <param name="last">Last day that has begun: it pays its standing charge.</param>
    public IReadOnlyList<DayCharge> Of(IEnumerable<DayShare> shares, LocalDate first, LocalDate last)
    {
        if (first.Day != 1) throw new ArgumentOutOfRangeException(nameof(first), first, "blocks and bills begin with a month");
        var byDay = shares.ToLookup(s => (s.Kind, s.Day));
        var charges = new List<DayCharge>();
        foreach (var kind in Enum.GetValues<EnergyKind>())
            for (var month = first; month <= last; month = month.PlusMonths(1))
                charges.AddRange(Month(kind, month, LocalDate.Min(last, month.With(DateAdjusters.EndOfMonth)), byDay));
        return charges;
    }

    List<DayCharge> Month(EnergyKind kind, LocalDate first, LocalDate last, ILookup<(EnergyKind, LocalDate), DayShare> byDay)
    {
        var exact = new List<ExactDay>();
        decimal used = 0;
        Tariff? before = null;
        for (var day = first; day <= last; day = day.PlusDays(1))
        {
            DayShare[] shares = [.. byDay[(kind, day)]];
            var tariff = prices.InForce(kind, day);
            // A new list may count in another unit: what the month has used until now is counted again in its unit.
            if (tariff != before && tariff is not null) used = exact.Sum(e => e.Shares.Sum(s => Quantity(tariff, s)));
            before = tariff;
            var one = tariff is null ? ExactDay.WithoutPrice(day, shares) : Day(tariff, day, shares, used);
            used += one.Quantity;
            exact.Add(one);
        }
        var priced = exact.Where(e => e.Parts is not null).ToList();
        var totals = LargestRemainder.Share([.. priced.Select(e => e.Exact)], LargestRemainder.Round(priced.Sum(e => e.Exact), digits), digits);
        var whole = priced.Zip(totals).ToDictionary(p => p.First.Day, p => p.Second);
        return [.. exact.Select(e => e.Charge(kind, e.Parts is null ? null : whole[e.Day], digits))];
    }

    ExactDay Day(Tariff tariff, LocalDate day, DayShare[] shares, decimal used)
    {
        var quantities = shares.Select(s => Quantity(tariff, s)).ToArray();
        var quantity = quantities.Sum();
        var lines = new List<DayLine>();
        foreach (var (block, taken) in tariff.Slices(used, quantity)) Add(LineKind.Energy, block.Order, BlockName(tariff, block), tariff.Unit.NameOf(), block.Price, taken, taken * block.Price);
        foreach (var (rider, i) in tariff.Riders.Select((r, i) => (r, i))) Add(LineKind.Rider, i, rider.Name, tariff.Unit.NameOf(), rider.PerUnit, quantity, quantity * rider.PerUnit);
        var energy = lines.Sum(l => l.Exact);
        var standing = tariff.StandingOf(day);
        if (standing != 0) Add(LineKind.Standing, 0, "standing charge", "day", null, 1, standing);
        foreach (var (tax, i) in tariff.Taxes.Select((t, i) => (t, i))) Add(LineKind.Tax, i, tax.Name, "%", tax.Percent, energy + standing, (energy + standing) * tax.ShareOfSubtotal);
        var perUnit = quantity == 0 ? 0 : energy * tariff.TaxFactor / quantity;
        var kilowattHours = (decimal)shares.Sum(s => s.KilowattHours);
        return new ExactDay(day, shares, [.. quantities.Select(q => q * perUnit)], standing * tariff.TaxFactor, lines, quantity, kilowattHours > 0 ? perUnit * quantity / kilowattHours : null);

        void Add(LineKind kind, int order, string name, string unit, decimal? price, decimal amount, decimal exact) =>
            lines.Add(new DayLine(new LineKey(tariff.Kind, tariff.From, order, kind, name, unit, price), amount, exact));
    }

    static string BlockName(Tariff tariff, PriceBlock block) =>
        tariff.Blocks.Count == 1 ? "energy" : block.UpTo is { } upTo ? FormattableString.Invariant($"energy, {block.From:0.##} to {upTo:0.##}") : FormattableString.Invariant($"energy, above {block.From:0.##}");

    decimal Quantity(Tariff tariff, DayShare share) => tariff.Quantity(share.KilowattHours, share.BaseCubicMetres, share.LineCubicMetres, gas);
}

/// <summary>A day before rounding.</summary>
/// <param name="Parts">Exact amounts of the shares, taxes included; null without a price.</param>
/// <param name="Quantity">In the price list's unit.</param>
sealed record ExactDay(LocalDate Day, IReadOnlyList<DayShare> Shares, IReadOnlyList<decimal>? Parts, decimal Standing, IReadOnlyList<DayLine> Lines, decimal Quantity, decimal? PerKilowattHour)
{
    public static ExactDay WithoutPrice(LocalDate day, IReadOnlyList<DayShare> shares) => new(day, shares, null, 0, [], 0, null);

    public decimal Exact => Parts is null ? 0 : Parts.Sum() + Standing;

    /// <param name="whole">The day's share of its month's bill; null without a price.</param>
    public DayCharge Charge(EnergyKind kind, decimal? whole, int digits)
    {
        if (whole is not { } amount || Parts is null) return new DayCharge(Day, kind, Shares, null, 0, Lines, null);
        // A day without use and without a standing charge can get no unit of the bill: nothing was left over for it.
        var parts = LargestRemainder.Share([.. Parts, Standing], amount, digits);
        return new DayCharge(Day, kind, Shares, parts[..^1], parts[^1], Lines, PerKilowattHour);
    }
}
