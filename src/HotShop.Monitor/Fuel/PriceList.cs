using System.Globalization;
using HotShop.Monitor.Configuration;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Fuel;

/// <summary>Dated prices of one kWh. The last one that has begun holds; before the first there is no price.</summary>
public sealed class PriceList(IEnumerable<PriceOptions> prices)
{
    readonly List<(EnergyKind Kind, LocalDate From, decimal PerKilowattHour)> list =
        [.. prices.Select(p => (p.Energy == "gas" ? EnergyKind.Gas : EnergyKind.Electricity, LocalDatePattern.Iso.Parse(p.From).Value, p.PerKilowattHour)).OrderBy(p => p.Item2)];

    public decimal? On(EnergyKind kind, LocalDate day)
    {
        decimal? price = null;
        foreach (var line in list) if (line.Kind == kind && line.From <= day) price = line.PerKilowattHour;
        return price;
    }

    /// <summary>Cost of an amount on a day, not rounded; null where no price is known and there is something to pay.</summary>
    public decimal? CostOf(EnergyKind kind, double kilowattHours, LocalDate day) =>
        kilowattHours == 0 ? 0m : On(kind, day) is { } price ? (decimal)kilowattHours * price : null;
}
