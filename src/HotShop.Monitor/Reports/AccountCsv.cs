using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Reports;

/// <summary>
/// An account as a table for a spreadsheet: a row for each day and part of it, for each day's standing charges, for a day of which nothing is known, and the totals. RFC 4180 with a byte order mark,
/// the separator and decimal mark of the studio's country, and the digits that the page shows. Sums of the rows "part" and "standing" are the rows "total".
/// </summary>
static class AccountCsv
{
    const int EnergyDecimals = 1, GasDecimals = 2;

    public static byte[] Of(Account account, StudioFormat format)
    {
        using var bytes = new MemoryStream();
        using (var csv = new CsvWriter(new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)), new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = format.CellSeparator, NewLine = "\r\n", ShouldQuote = a => CellText.NeedsQuotes(a.Field, format.CellSeparator),
        }))
        {
            Row(csv, ["row", "day", "appliance", "name", "purpose", "energy", "known", $"energy [kWh]", $"gas [{format.GasUnit}]", $"amount [{format.Currency}]", "measured [%]",
                "energy low 95 % [kWh]", "energy high 95 % [kWh]", $"amount low 95 % [{format.Currency}]", $"amount high 95 % [{format.Currency}]"]);
            foreach (var day in account.Days) Day(csv, day, format);
            Totals(csv, account, format);
        }
        return bytes.ToArray();
    }

    static void Day(CsvWriter csv, AccountDay day, StudioFormat format)
    {
        var (date, measured) = (LocalDatePattern.Iso.Format(day.Day), Number(format, day.MeasuredShare.Value * 100, EnergyDecimals));
        foreach (var part in day.Parts)
            Row(csv, ["part", date, CellText.Guard(part.Appliance), CellText.Guard(part.ApplianceName), part.PurposeText, Kind(part.Kind), Known(part.Origin),
                Number(format, part.EnergyKwh.Value, EnergyDecimals), Gas(format, part.Kind, part.GasCubicMetres.Value), Money(format, part.Amount), measured, .. Ends(format, part.EnergyKwh), .. Ends(format, part.Amount)]);
        // A day of which nothing is known has its row all the same: a gap is not a day less.
        if (day.Parts.Count == 0) Row(csv, ["gap", date, "", "", "", "", "", "", "", "", measured, "", "", "", ""]);
        if (day.Standing.Value != 0)
            Row(csv, ["standing", date, "", "", "standing charge", "", "", "", "", Number(format, day.Standing.Value), measured, "", "", Number(format, day.Standing.Value), Number(format, day.Standing.Value)]);
    }

    static void Totals(CsvWriter csv, Account account, StudioFormat format)
    {
        foreach (var kind in new[] { EnergyKind.Gas, EnergyKind.Electricity })
        {
            var parts = account.Days.SelectMany(d => d.Parts).Where(p => p.Kind == kind).ToList();
            if (parts.Count == 0) continue;
            var energy = kind == EnergyKind.Gas ? account.GasKwh : account.ElectricityKwh;
            Row(csv, ["total", "", "", "", "", Kind(kind), "", Number(format, energy.Value, EnergyDecimals),
                Gas(format, kind, parts.Sum(p => p.GasCubicMetres.Value)), parts.Any(p => p.Amount is not null) ? Number(format, parts.Sum(p => p.Amount?.Value ?? 0)) : "", "", .. Ends(format, energy), "", ""]);
        }
        var standing = account.Days.Sum(d => d.Standing.Value);
        if (standing != 0) Row(csv, ["total", "", "", "", "standing charge", "", "", "", "", Number(format, standing), "", "", "", Number(format, standing), Number(format, standing)]);
        Row(csv, ["total", "", "", "", "", "all", "", Number(format, account.EnergyKwh.Value, EnergyDecimals), "", account.Cost is { } cost ? Number(format, cost.Value) : "",
            Number(format, account.MeasuredShare.Value * 100, EnergyDecimals), .. Ends(format, account.EnergyKwh), .. Ends(format, account.Cost)]);
        foreach (var missing in account.MissingPrices) Row(csv, ["note", LocalDatePattern.Iso.Format(missing.First), "", CellText.Guard(missing.Text), "", Kind(missing.Kind), "", "", "", "", "", "", "", "", ""]);
    }

    static void Row(CsvWriter csv, string[] cells)
    {
        foreach (var cell in cells) csv.WriteField(cell);
        csv.NextRecord();
    }

    static string Number(StudioFormat format, decimal amount) => format.Plain(amount, format.Digits);

    static string Number(StudioFormat format, double value, int decimals) => format.Plain((decimal)value, decimals);

    static string Gas(StudioFormat format, EnergyKind kind, double cubicMetres) => kind == EnergyKind.Gas ? Number(format, format.InGasUnit(cubicMetres), GasDecimals) : "";

    /// <summary>Nothing where no price is known: a nought would be a claim.</summary>
    static string Money(StudioFormat format, AmountInterval? amount) => amount is { } known ? Number(format, known.Value) : "";

    /// <summary>Both ends of a 95 % interval. The ends of parts do not add up to those of their sum: one meter's error is in all of them.</summary>
    static string[] Ends(StudioFormat format, Money.Interval energy) => [Number(format, energy.Low95, EnergyDecimals), Number(format, energy.High95, EnergyDecimals)];

    static string[] Ends(StudioFormat format, AmountInterval? amount) => amount is null ? ["", ""] : [Number(format, amount.Low95), Number(format, amount.High95)];

    static string Kind(EnergyKind kind) => kind == EnergyKind.Gas ? "gas" : "electricity";

    static string Known(Origin origin) => origin switch { Origin.Measured => "measured", Origin.Derived => "derived", _ => "estimated" };
}
