using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

/// <summary>A price list of one kind of energy from a day on, as the supplier's bill has it. A later one replaces it as a whole.</summary>
public sealed record PriceOptions
{
    [Description("First day the price holds, in the studio's zone: YYYY-MM-DD.")]
    public required string From { get; init; }

    [Description("gas or electricity.")]
    public required string Energy { get; init; }

    [Description("Short way: price of one kWh (gas: gross), in the studio's currency. Or name 'unit' and 'price', or 'unit' and 'blocks'.")]
    public decimal? PerKilowattHour { get; init; }

    [Description("What the bill counts: kWh, GJ, therm, dekatherm; m3, CCF, MCF (gas at the conditions of 'gas.base', or by 'billFactor'); litre, gallon (US) or kilogram of propane.")]
    public string? Unit { get; init; }

    [Description("Price of one unit.")]
    public decimal? Price { get; init; }

    [Description("Prices by slices of a calendar month's use: the first so many units at one price, the next at another. The last has no 'upTo'.")]
    public IReadOnlyList<PriceBlockOptions> Blocks { get; init; } = [];

    [Description("What the bill adds to or takes off every unit: levies, adjustments.")]
    public IReadOnlyList<RiderOptions> Riders { get; init; } = [];

    [Description("Standing charge for each day.")]
    public decimal StandingChargePerDay { get; init; }

    [Description("Standing charge for each calendar month; a part of a month pays by its days.")]
    public decimal StandingChargePerMonth { get; init; }

    [Description("Taxes on top, in the order of the bill. Leave out where prices include them.")]
    public IReadOnlyList<TaxOptions> Taxes { get; init; } = [];

    [Description("Gas: how the bill makes its quantity from the meter's cubic metres. Left out: this file's 'gas' does.")]
    public BillFactorOptions? BillFactor { get; init; }

    [Description("Energy of one unit in kWh, gross, for litre, gallon or kilogram where the supplier states it. Left out: pure propane.")]
    public decimal? KilowattHoursPerUnit { get; init; }
}

public sealed record PriceBlockOptions
{
    [Description("The month's use, in units, up to which this price holds; left out in the last block.")]
    public decimal? UpTo { get; init; }

    [Description("Price of one unit in this block.")]
    public required decimal Price { get; init; }
}

public sealed record RiderOptions
{
    [Description("As the bill calls it.")]
    public required string Name { get; init; }

    [Description("Per unit; below zero for a credit.")]
    public required decimal PerUnit { get; init; }
}

public sealed record TaxOptions
{
    [Description("As the bill calls it.")]
    public required string Name { get; init; }

    [Description("Percent, e.g. 19.")]
    public required decimal Percent { get; init; }

    [Description("subtotal: of energy, riders and standing charge. subtotal-and-taxes: of those and of the taxes named before.")]
    public string On { get; init; } = "subtotal";
}

public sealed record BillFactorOptions
{
    [Description("What the bill multiplies the meter's volume with: 1.02264 in the United Kingdom, the pressure (and altitude) factor in the United States.")]
    public decimal VolumeFactor { get; init; } = 1;

    [Description("Heating value as the bill has it, gross; needed where the unit is an energy.")]
    public decimal? HeatingValue { get; init; }

    [Description("Unit of the heating value: MJ/m3, kWh/m3, Btu/ft3 or therm/CCF.")]
    public string HeatingValueUnit { get; init; } = "MJ/m3";
}
