using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>Dated price lists. The last one that has begun holds; before the first there is no price.</summary>
public sealed class PriceList
{
    readonly List<Tariff> list;

    /// <summary>Of each list, worked out when it is first asked: a year by the hour asks a hundred thousand times.</summary>
    readonly Dictionary<Tariff, Lazy<decimal>> perKilowattHour;

    public PriceList(IEnumerable<PriceOptions> prices, StudioGas gas)
    {
        list = [.. prices.Select(p => new Tariff(p)).OrderBy(t => t.From)];
        perKilowattHour = list.ToDictionary(t => t, t => new Lazy<decimal>(() => t.PerKilowattHour(gas)));
    }

    public IReadOnlyList<Tariff> All => list;

    /// <summary>The price list in force on a day; null where none has begun.</summary>
    public Tariff? InForce(EnergyKind kind, LocalDate day)
    {
        for (var i = list.Count - 1; i >= 0; i--) if (list[i].Kind == kind && list[i].From <= day) return list[i];
        return null;
    }

    /// <summary>Price of one more kWh on a day; see <see cref="Tariff.PerKilowattHour"/>.</summary>
    public decimal? On(EnergyKind kind, LocalDate day) => InForce(kind, day) is { } tariff ? perKilowattHour[tariff].Value : null;

    /// <summary>Cost of an amount on a day that stands alone, not rounded: no standing charge, first block. Null where no price is known and there is something to pay.</summary>
    public decimal? CostOf(EnergyKind kind, double kilowattHours, LocalDate day) =>
        kilowattHours == 0 ? 0m : On(kind, day) is { } price ? (decimal)kilowattHours * price : null;
}
