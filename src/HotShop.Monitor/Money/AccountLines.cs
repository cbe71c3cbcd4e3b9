using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>The charges as lines of a bill, each with its formula and numbers; they make the cost to the smallest unit.</summary>
sealed class AccountLines(StudioFormat format)
{
    public IReadOnlyList<AccountLine> Of(Spending spending) => [.. spending.Charges.GroupBy(c => c.Kind).SelectMany(kind => OfKind([.. kind.Where(c => c.Amounts is not null)], spending.RelativeOf(kind.Key)))];

    IEnumerable<AccountLine> OfKind(IReadOnlyList<DayCharge> charges, double energyRelative)
    {
        var lines = charges.SelectMany(c => c.Lines).GroupBy(l => l.Key)
            .Select(g => (g.Key, Quantity: g.Sum(l => l.Quantity), Exact: g.Sum(l => l.Exact)))
            .OrderBy(l => l.Key.PricesFrom).ThenBy(l => l.Key.LineKind).ThenBy(l => l.Key.Order).ToList();
        var total = charges.Sum(c => c.Total ?? 0);
        var amounts = LargestRemainder.Share([.. lines.Select(l => l.Exact)], total, format.Digits);
        return lines.Select((l, i) => new AccountLine(l.Key.Kind, l.Key.LineKind, l.Key.Name, Calculation(l.Key, l.Quantity, l.Exact), format.Shown(amounts[i], Math.Abs(amounts[i]) * (decimal)(energyRelative * EnergyPart(l.Key.LineKind)))));

        // A standing charge is certain; a tax is as uncertain as the energy in what it is taken on.
        double EnergyPart(LineKind kind)
        {
            if (kind is not LineKind.Tax) return kind is LineKind.Standing ? 0 : 1;
            var (energy, standing) = (lines.Where(l => l.Key.LineKind is LineKind.Energy or LineKind.Rider).Sum(l => l.Exact), lines.Where(l => l.Key.LineKind == LineKind.Standing).Sum(l => l.Exact));
            return energy + standing == 0 ? 0 : (double)(energy / (energy + standing));
        }
    }

    string Calculation(LineKey key, decimal quantity, decimal exact) => key.LineKind switch
    {
        LineKind.Standing => $"{format.Number(quantity, 0)} {(quantity == 1 ? "day" : "days")} × {format.Price(Math.Round(exact / quantity, 4, MidpointRounding.AwayFromZero))}",
        LineKind.Tax => $"{format.Number(key.PerUnit!.Value, DecimalsOf(key.PerUnit.Value))} % of {format.Amount(LargestRemainder.Round(quantity, format.Digits))}",
        _ => $"{format.Number(quantity, 1)} {key.Unit} × {format.Price(key.PerUnit!.Value)}",
    };

    static int DecimalsOf(decimal percent) => percent == decimal.Truncate(percent) ? 0 : 2;

    /// <summary>Price lists that held on a day of the span, in words.</summary>
    public IReadOnlyList<PriceInForce> InForce(PriceList prices, LocalDate first, LocalDate last) =>
        [.. Enum.GetValues<EnergyKind>().SelectMany(kind =>
            prices.All.Where(t => t.Kind == kind && ((t.From > first && t.From <= last) || t == prices.InForce(kind, first))))
            .Select(t => new PriceInForce(t.Kind, t.From, format.Day(t.From), [.. Texts(t)]))];

    IEnumerable<string> Texts(Tariff tariff)
    {
        var unit = tariff.Unit.NameOf();
        foreach (var block in tariff.Blocks)
            yield return format.Price(block.Price) + $" a {unit}" + (tariff.Blocks.Count == 1 ? ""
                : block.UpTo is { } upTo ? $" from {format.Number(block.From, 0)} to {format.Number(upTo, 0)} {unit} of a month" : $" above {format.Number(block.From, 0)} {unit} of a month");
        foreach (var rider in tariff.Riders) yield return $"{rider.Name}: {format.Price(rider.PerUnit)} a {unit}";
        if (tariff.StandingPerDay != 0) yield return $"standing charge: {format.Price(tariff.StandingPerDay)} a day";
        if (tariff.StandingPerMonth != 0) yield return $"standing charge: {format.Price(tariff.StandingPerMonth)} a month";
        foreach (var tax in tariff.Taxes) yield return $"{tax.Name}: {format.Number(tax.Percent, DecimalsOf(tax.Percent))} %";
    }
}
