using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Fuel;

/// <summary>A slice of a month's use at one price; the last goes on for ever.</summary>
/// <param name="Order">Its place, from 0.</param>
public sealed record PriceBlock(int Order, decimal From, decimal? UpTo, decimal Price);

/// <summary>A tax as a share of the subtotal: one that is taken on other taxes has them worked in.</summary>
public sealed record TariffTax(string Name, decimal Percent, decimal ShareOfSubtotal);

/// <summary>
/// A price list of one kind of energy from a day on. Money is decimal and is not rounded here: a bill rounds once, at its end.
/// A quantity is a measured number and becomes decimal with 15 digits.
/// </summary>
public sealed class Tariff
{
    readonly decimal? kilowattHoursPerUnit;
    readonly BillFactorOptions? factor;

    public Tariff(PriceOptions options)
    {
        From = LocalDatePattern.Iso.Parse(options.From).Value;
        Kind = options.Energy == "gas" ? EnergyKind.Gas : EnergyKind.Electricity;
        Unit = BilledUnits.Parse(options.Unit) ?? BilledUnit.KilowattHour;
        Blocks = options.Blocks.Count == 0
            ? [new PriceBlock(0, 0, null, options.PerKilowattHour ?? options.Price ?? throw new ArgumentException("unchecked price list without a price", nameof(options)))]
            : [.. options.Blocks.Select((b, i) => new PriceBlock(i, i == 0 ? 0 : options.Blocks[i - 1].UpTo!.Value, b.UpTo, b.Price))];
        Riders = options.Riders;
        (StandingPerDay, StandingPerMonth) = (options.StandingChargePerDay, options.StandingChargePerMonth);
        Taxes = Worked(options.Taxes);
        factor = options.BillFactor;
        kilowattHoursPerUnit = options.KilowattHoursPerUnit;
    }

    public LocalDate From { get; }
    public EnergyKind Kind { get; }
    public BilledUnit Unit { get; }
    public IReadOnlyList<PriceBlock> Blocks { get; }
    public IReadOnlyList<RiderOptions> Riders { get; }
    public decimal StandingPerDay { get; }
    public decimal StandingPerMonth { get; }
    public IReadOnlyList<TariffTax> Taxes { get; }

    /// <summary>1 and all taxes: what a subtotal is multiplied with.</summary>
    public decimal TaxFactor => 1 + Taxes.Sum(t => t.ShareOfSubtotal);

    /// <summary>Standing charge of a day, taxes not included: a month's is shared out evenly over its days.</summary>
    public decimal StandingOf(LocalDate day) => StandingPerDay + StandingPerMonth / day.Calendar.GetDaysInMonth(day.Year, day.Month);

    /// <summary>What the bill counts of a use. With the bill's own factor the meter's volume is taken; else energy, or volume at base conditions.</summary>
    /// <param name="kilowattHours">Gross.</param>
    /// <param name="baseCubicMetres">At base conditions; 0 where no meter counted.</param>
    /// <param name="lineCubicMetres">As the meter counted; 0 where no meter counted.</param>
    /// <param name="gas">The studio's, for a volume of gas that was only estimated as energy.</param>
    public decimal Quantity(double kilowattHours, double baseCubicMetres, double lineCubicMetres, StudioGas gas)
    {
        if (Unit.CubicMetres() is { } cubicMetres)
        {
            if (factor is not null && lineCubicMetres > 0) return (decimal)lineCubicMetres * factor.VolumeFactor / (decimal)cubicMetres;
            var volume = baseCubicMetres > 0 ? baseCubicMetres : kilowattHours / gas.Fuel.GrossKilowattHoursPerCubicMetre;
            return (decimal)volume / (decimal)cubicMetres;
        }
        if (factor is { HeatingValue: not null } && lineCubicMetres > 0) return BilledEnergy((decimal)lineCubicMetres);
        return (decimal)kilowattHours / (kilowattHoursPerUnit ?? (decimal)Unit.KilowattHours()!.Value);
    }

    /// <summary>The bill's way: volume × factor × heating value, nothing rounded in between.</summary>
    decimal BilledEnergy(decimal lineCubicMetres)
    {
        var (value, volume) = (factor!.HeatingValue!.Value, lineCubicMetres * factor.VolumeFactor);
        var kilowattHours = factor.HeatingValueUnit switch
        {
            "kWh/m3" => volume * value,
            "Btu/ft3" => volume * (decimal)EnergyUnits.KilowattHoursPerCubicMetreOfBtu((double)value),
            "therm/CCF" => volume / (decimal)BilledUnit.HundredCubicFeet.CubicMetres()!.Value * value * (decimal)EnergyUnits.KilowattHoursPerTherm,
            _ => volume * value / (decimal)EnergyUnits.MegajoulesPerKilowattHour,
        };
        return Unit == BilledUnit.KilowattHour ? kilowattHours : kilowattHours / (decimal)Unit.KilowattHours()!.Value;
    }

    /// <summary>A quantity cut into the blocks it falls into, when so much of the month was used before.</summary>
    public IEnumerable<(PriceBlock Block, decimal Quantity)> Slices(decimal usedBefore, decimal quantity)
    {
        foreach (var block in Blocks)
        {
            var (from, to) = (Math.Max(block.From, usedBefore), Math.Min(block.UpTo ?? decimal.MaxValue, usedBefore + quantity));
            if (to > from) yield return (block, to - from);
        }
    }

    /// <summary>Price of one more kWh in the first block, riders and taxes included, standing charge not: for an hour that stands alone.</summary>
    public decimal PerKilowattHour(StudioGas gas) => (Blocks[0].Price + Riders.Sum(r => r.PerUnit)) * TaxFactor * Quantity(1, 0, 0, gas);

    static List<TariffTax> Worked(IReadOnlyList<TaxOptions> taxes)
    {
        var worked = new List<TariffTax>();
        foreach (var tax in taxes)
            worked.Add(new TariffTax(tax.Name, tax.Percent, tax.Percent / 100 * (tax.On == "subtotal" ? 1 : 1 + worked.Sum(t => t.ShareOfSubtotal))));
        return worked;
    }
}
