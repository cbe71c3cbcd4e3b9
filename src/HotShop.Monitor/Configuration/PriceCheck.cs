using System.Globalization;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

/// <summary>Whether price lists can be worked with, and whether the bill's numbers were typed where they belong.</summary>
static class PriceCheck
{
    internal static readonly string[] EnergyUnits = ["kWh", "GJ", "therm", "dekatherm"], VolumeUnits = ["m3", "CCF", "MCF"], PropaneUnits = ["litre", "gallon", "kilogram"];
    static readonly string[] heatingValueUnits = ["MJ/m3", "kWh/m3", "Btu/ft3", "therm/CCF"];

    static IEnumerable<string> Units => EnergyUnits.Concat(VolumeUnits).Concat(PropaneUnits);

    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var seen = new HashSet<(string, string)>();
        for (var i = 0; i < configuration.Prices.Count; i++)
        {
            var (at, price) = ($"prices[{i}]", configuration.Prices[i]);
            if (!LocalDatePattern.Iso.Parse(price.From).Success)
                found.Add($"{at}.from", $"'{price.From}' is no date", "write YYYY-MM-DD");
            if (price.Energy is not ("gas" or "electricity"))
                found.Add($"{at}.energy", $"'{price.Energy}' is unknown", "write gas or electricity");
            if (!seen.Add((price.Energy, price.From)))
                found.Add($"{at}.from", $"there are two price lists of {price.Energy} from {price.From}", "keep one, or give the later its own day");
            Amounts(found, at, price);
            Unit(found, at, price);
            Blocks(found, at, price);
            Factor(found, at, price);
        }
        if (configuration.Electricity is { CarbonDioxideKilogramsPerKilowattHour: { } factor } electricity)
        {
            found.Range("electricity.carbonDioxideKilogramsPerKilowattHour", factor, 0, 2);
            if (string.IsNullOrWhiteSpace(electricity.CarbonDioxideSource) || electricity.CarbonDioxideYear is null)
                found.Add("electricity", "the carbon dioxide factor has no source or year", "write carbonDioxideSource and carbonDioxideYear as the supplier's disclosure has them");
        }
    }

    static void Amounts(ProblemList found, string at, PriceOptions price)
    {
        var ways = (price.PerKilowattHour is null ? 0 : 1) + (price.Price is null ? 0 : 1) + (price.Blocks.Count > 0 ? 1 : 0);
        if (ways != 1)
            found.Add(at, ways == 0 ? "there is no price" : "there is more than one price", "write one of perKilowattHour, price (with unit) or blocks (with unit)");
        if (price.PerKilowattHour is < 0 or > 10)
            found.Add($"{at}.perKilowattHour", Invariant($"{price.PerKilowattHour} is no price of one kWh"), "write the price of one kWh, e.g. 0.11");
        if (price.Price is < 0) found.Add($"{at}.price", Invariant($"{price.Price} is below zero"), "write the price of one unit, e.g. 0.98");
        if (price.StandingChargePerDay < 0 || price.StandingChargePerMonth < 0)
            found.Add($"{at}.standingChargePer{(price.StandingChargePerDay < 0 ? "Day" : "Month")}", "a standing charge below zero", "write what each day or month costs, 0 for none");
        for (var i = 0; i < price.Taxes.Count; i++)
        {
            var tax = price.Taxes[i];
            if (tax.Percent is < 0 or > 100) found.Add($"{at}.taxes[{i}].percent", Invariant($"{tax.Percent} is no percentage"), "write e.g. 19 for 19 %");
            if (tax.On is not ("subtotal" or "subtotal-and-taxes")) found.Add($"{at}.taxes[{i}].on", $"'{tax.On}' is unknown", "write subtotal or subtotal-and-taxes");
        }
    }

    static void Unit(ProblemList found, string at, PriceOptions price)
    {
        if (price.PerKilowattHour is not null && price.Unit is not (null or "kWh"))
            found.Add($"{at}.unit", $"'{price.Unit}' beside perKilowattHour", "write 'price' in place of perKilowattHour, or leave the unit out");
        if (price.PerKilowattHour is not null) return;
        if (price.Unit is null) found.Add($"{at}.unit", "the price has no unit", $"write what the bill counts: {string.Join(", ", Units)}");
        else if (!Units.Contains(price.Unit)) found.Add($"{at}.unit", $"'{price.Unit}' is unknown", $"write one of {string.Join(", ", Units)}");
        else if (price.Energy == "electricity" && price.Unit != "kWh") found.Add($"{at}.unit", $"electricity is not sold by the {price.Unit}", "write kWh");
        if (price.KilowattHoursPerUnit is not null && !PropaneUnits.Contains(price.Unit))
            found.Add($"{at}.kilowattHoursPerUnit", "is for litre, gallon or kilogram alone", "leave it out; the heating value stands under 'gas' or 'billFactor'");
        if (price.KilowattHoursPerUnit is <= 0 or > 40)
            found.Add($"{at}.kilowattHoursPerUnit", Invariant($"{price.KilowattHoursPerUnit} is out of range"), "write kWh in one litre (about 7.1), gallon (about 26.8) or kilogram (about 14)");
    }

    static void Blocks(ProblemList found, string at, PriceOptions price)
    {
        decimal below = 0;
        for (var i = 0; i < price.Blocks.Count; i++)
        {
            var (block, isLast) = (price.Blocks[i], i == price.Blocks.Count - 1);
            if (block.Price < 0) found.Add($"{at}.blocks[{i}].price", Invariant($"{block.Price} is below zero"), "write the price of one unit");
            if (isLast && block.UpTo is not null) found.Add($"{at}.blocks[{i}].upTo", "the last block ends, and more would have no price", "leave 'upTo' out of the last block");
            if (!isLast && !(block.UpTo > below)) found.Add($"{at}.blocks[{i}].upTo", "the blocks do not rise", "write up to how many units of the month each price holds, rising");
            below = block.UpTo ?? below;
        }
    }

    static void Factor(ProblemList found, string at, PriceOptions price)
    {
        if (price.BillFactor is not { } factor) return;
        if (price.Energy != "gas") found.Add($"{at}.billFactor", "is for gas alone", "leave it out");
        if (factor.VolumeFactor is < 0.5m or > 3) found.Add($"{at}.billFactor.volumeFactor", Invariant($"{factor.VolumeFactor} is out of range"), "write the bill's factor, e.g. 1.02264");
        if (!heatingValueUnits.Contains(factor.HeatingValueUnit)) found.Add($"{at}.billFactor.heatingValueUnit", $"'{factor.HeatingValueUnit}' is unknown", $"write one of {string.Join(", ", heatingValueUnits)}");
        if (factor.HeatingValue is <= 0) found.Add($"{at}.billFactor.heatingValue", Invariant($"{factor.HeatingValue} is out of range"), "write the bill's heating value, e.g. 39.3");
        if (factor.HeatingValue is null && (price.Unit is null || EnergyUnits.Contains(price.Unit)))
            found.Add($"{at}.billFactor.heatingValue", "the bill's energy needs its heating value", "write it with heatingValueUnit, e.g. 39.3 and MJ/m3");
        if (PropaneUnits.Contains(price.Unit)) found.Add($"{at}.billFactor", $"a {price.Unit} needs no factor of a meter", "leave it out");
    }

    static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
