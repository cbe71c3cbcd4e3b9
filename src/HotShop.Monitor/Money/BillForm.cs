using System.Globalization;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Money;

/// <summary>Whether a bill as typed can be one, however it came. Pure.</summary>
public static class BillForm
{
    const int LongestText = 2000, LongestId = 100, MostDays = 800;

    /// <param name="row">As typed.</param>
    /// <param name="today">In the studio's zone.</param>
    /// <param name="newId">Id for a row that has none.</param>
    /// <returns>The bill, or what is wrong with it and what to write; never both.</returns>
    public static (Bill? Bill, string? Problem) Check(BillRow row, LocalDate today, Func<string> newId)
    {
        try
        {
            var kind = Trim(row.Energy) switch
            {
                "gas" => EnergyKind.Gas,
                "electricity" => EnergyKind.Electricity,
                null => throw new FormatException("'energy' is missing: write gas or electricity"),
                var other => throw new FormatException($"'energy' is '{Shown.Short(other)}': write gas or electricity"),
            };
            var (first, last) = (Day(row.First, "first"), Day(row.Last, "last"));
            if (last < first) throw new FormatException("'last' is before 'first': 'last' is the last day that is on the bill");
            if (last > today) throw new FormatException($"'last' is {LocalDatePattern.Iso.Format(last)}, which is still to come: write the last day that is on the bill");
            if (Period.DaysBetween(first, last) >= MostDays) throw new FormatException($"the bill covers more than {MostDays} days: is a year mistyped?");
            if (first.Year < 2000) throw new FormatException("'first' is before the year 2000: is a year mistyped?");
            var isStriking = Trim(row.Corrects) is not null && Trim(row.Quantity) is null;
            decimal? quantity = isStriking ? null : Number(row.Quantity, "quantity") ?? throw new FormatException("'quantity' is missing: write what the bill counts, e.g. 1843.2");
            if (quantity < 0) throw new FormatException("'quantity' is below zero: a credit goes into 'amount'");
            var id = Text(row.Id, "id", LongestId) ?? newId();
            return (new Bill(id, kind, first, last, quantity, UnitOf(row.Unit, kind), Positive(row.EnergyKwh, "energyKwh"), Number(row.Amount, "amount"),
                Text(row.Note, "note", LongestText), Text(row.Who, "who", LongestId), Text(row.Corrects, "corrects", LongestId)), null);
        }
        catch (FormatException problem)
        {
            return (null, problem.Message);
        }
    }

    static BilledUnit UnitOf(string? text, EnergyKind kind)
    {
        var unit = BilledUnits.Parse(Trim(text) ?? "kWh") ?? throw new FormatException($"'unit' is '{Shown.Short(text!)}': write one of {string.Join(", ", BilledUnits.Names)}");
        return kind == EnergyKind.Gas || unit == BilledUnit.KilowattHour ? unit : throw new FormatException($"electricity is not counted in {unit.NameOf()}: write kWh");
    }

    static LocalDate Day(string? text, string name) => Trim(text) is not { } written
        ? throw new FormatException($"'{name}' is missing: write a day like 2026-10-01")
        : LocalDatePattern.Iso.Parse(written) is { Success: true } day ? day.Value : throw new FormatException($"'{name}' is '{Shown.Short(written)}': write a day like 2026-10-01");

    static decimal? Positive(string? text, string name) =>
        Number(text, name) is var number && number < 0 ? throw new FormatException($"'{name}' is below zero: write a number from 0") : number;

    static decimal? Number(string? text, string name)
    {
        if (Trim(text) is not { } written) return null;
        const NumberStyles plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return decimal.TryParse(written, plain, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) < 1e12m
            ? number
            : throw new FormatException($"'{name}' is '{Shown.Short(written)}': write a number like 1843.20, with a point before the decimals and nothing between thousands");
    }

    static string? Text(string? text, string name, int longest) =>
        Trim(text) is { } written && written.Length > longest ? throw new FormatException($"'{name}' has {written.Length} characters: write at most {longest}") : Trim(text);

    static string? Trim(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
