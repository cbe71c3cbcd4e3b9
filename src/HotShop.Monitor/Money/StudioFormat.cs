using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Money;

/// <summary>
/// The one place that turns amounts, quantities and days into text. Page, CSV, JSON and PDF show what it says, so they agree to the last digit:
/// each quantity has a fixed number of decimals, wherever it stands.
/// </summary>
public sealed class StudioFormat
{
    const string Minus = "-", Space = "\u00a0";

    readonly WritingHabit habit;
    readonly string sign;
    readonly bool isUsFirst;

    public StudioFormat(StudioConfiguration configuration)
    {
        habit = configuration.Culture is { } named
            ? WritingHabit.Named(named) ?? throw new ArgumentException($"unchecked culture '{named}'", nameof(configuration))
            : WritingHabit.Usual(configuration.Currency, configuration.Zone);
        Currency = configuration.Currency;
        // "$" and "kr" mean another currency elsewhere: away from home a currency is called by its code, the euro excepted.
        sign = habit.Currency == Currency ? habit.Sign : Currency == "EUR" ? "€" : Currency;
        isUsFirst = configuration.Units == "us" || (configuration.Units == "both" && habit.Culture == "en-US");
        Digits = CurrencyDigits.Of(Currency);
    }

    /// <summary>ISO 4217.</summary>
    public string Currency { get; }

    /// <summary>Digits after the point of an amount.</summary>
    public int Digits { get; }

    /// <summary>As it stands beside an amount: €, $, kr.</summary>
    public string Sign => sign;

    public string Culture => habit.Culture;

    /// <summary>Before the decimals of a number as people of the studio's country type it.</summary>
    public string DecimalMark => habit.Decimal;

    /// <summary>Between the cells of a table that the country's spreadsheets open: where the comma is the decimal mark it cannot part cells.</summary>
    public string CellSeparator => habit.Decimal == "," ? ";" : ",";

    /// <summary>US units stand first.</summary>
    public bool IsUsFirst => isUsFirst;

    /// <summary>Pages are printed on US Letter, not on A4.</summary>
    public bool IsLetterPaper => habit.IsLetterPaper;

    /// <summary>An amount that is already whole in the smallest unit, with the currency's sign: 1.234,56 €.</summary>
    public string Amount(decimal amount) => Signed(amount, Number(Math.Abs(amount), Digits));

    /// <summary>A price of one unit, with as many decimals as it was given.</summary>
    public string Price(decimal price) => Signed(price, Number(Math.Abs(price), Math.Max(Digits, DecimalsOf(price))));

    /// <summary>A difference of amounts, always with its sign: +12,30 €.</summary>
    public string Difference(decimal amount) => (amount > 0 ? "+" : "") + Amount(amount);

    /// <summary>A round amount for the axis of a picture: without the smallest unit where it has none.</summary>
    public string Rough(decimal amount) => Signed(amount, Number(Math.Abs(amount), amount == decimal.Truncate(amount) ? 0 : Digits));

    string Signed(decimal amount, string digits)
    {
        // A sign of letters would run into the digits.
        var pattern = habit.Pattern == "¤n" && char.IsLetter(sign[^1]) ? $"¤{Space}n" : habit.Pattern;
        return (amount < 0 ? Minus : "") + pattern.Replace("¤", sign, StringComparison.Ordinal).Replace("n", digits, StringComparison.Ordinal);
    }

    public Amount Shown(decimal amount) => new(amount, Amount(amount));

    /// <summary>An amount with its 95 % interval, each rounded to the smallest unit.</summary>
    public AmountInterval Shown(decimal amount, decimal standardUncertainty)
    {
        var half = standardUncertainty * (decimal)Quantiles.Normal95;
        var (low, high) = (Math.Round(Math.Max(Math.Min(0, amount), amount - half), Digits, MidpointRounding.AwayFromZero), Math.Round(amount + half, Digits, MidpointRounding.AwayFromZero));
        return new AmountInterval(amount, low, high, Amount(amount), $"{Amount(low)} – {Amount(high)}");
    }

    /// <summary>A difference of amounts with its 95 % interval, always with its sign.</summary>
    public AmountInterval DifferenceShown(decimal amount, decimal standardUncertainty)
    {
        var half = Math.Round(standardUncertainty * (decimal)Quantiles.Normal95, Digits, MidpointRounding.AwayFromZero);
        return new AmountInterval(amount, amount - half, amount + half, Difference(amount), $"{Difference(amount - half)} – {Difference(amount + half)}");
    }

    /// <summary>Energy with its 95 % interval, which never goes below nothing.</summary>
    public Interval EnergyShown(double value, double low95, double high95) => Between(value, Math.Max(0, low95), high95, Energy, v => Number(v, 1));

    public Interval EnergyShown(Estimate energy) => EnergyShown(energy.Value, energy.Low95, energy.High95);

    /// <summary>A difference of energies, which may be below nothing.</summary>
    public Interval EnergyDifferenceShown(Estimate energy) => Between(energy.Value, energy.Low95, energy.High95, Energy, v => Number(v, 1));

    /// <summary>Gas at base conditions.</summary>
    public Interval GasShown(Estimate cubicMetres) => Between(cubicMetres.Value, Math.Max(0, cubicMetres.Low95), cubicMetres.High95, Gas, v => Number(InGasUnit(v), 2));

    /// <summary>A share of a whole.</summary>
    public Interval ShareShown(Estimate share) => Between(share.Value, Math.Max(Math.Min(0, share.Value), share.Low95), Math.Min(Math.Max(1, share.Value), share.High95), Percent, v => Number(v * 100, 1));

    /// <summary>A difference as a share.</summary>
    public Interval PercentShown(Estimate share) => Between(share.Value, share.Low95, share.High95, Percent, v => Number(v * 100, 1));

    public Interval GlassShown(Estimate glass) => Between(glass.Value, Math.Max(0, glass.Low95), glass.High95, Glass, v => Number(isUsFirst ? v / EnergyUnits.KilogramsPerPound : v, 1));

    /// <summary>kWh for each kilogram, whatever the units of the rest: the trade compares it so.</summary>
    public Interval PerKilogramShown(Estimate energy) => Between(energy.Value, Math.Max(0, energy.Low95), energy.High95, v => Number(v, 2) + Space + "kWh/kg", v => Number(v, 2));

    public Interval CarbonDioxideShown(Estimate kilograms) => Between(kilograms.Value, Math.Max(0, kilograms.Low95), kilograms.High95, CarbonDioxide, v => Number(v, 0));

    static Interval Between(double value, double low, double high, Func<double, string> withUnit, Func<double, string> bare) =>
        new(value, low, high, withUnit(value), $"{bare(low)} – {withUnit(high)}");

    public Figure EnergyFigure(double kilowattHours) => new(kilowattHours, Energy(kilowattHours));

    public Figure PercentFigure(double share) => new(share, Percent(share));

    public string Energy(double kilowattHours) => Number(kilowattHours, 1) + Space + "kWh";

    /// <summary>Volume of gas at base conditions, in m³ or in CCF where US units stand first.</summary>
    public string Gas(double cubicMetres) => Number(InGasUnit(cubicMetres), 2) + Space + GasUnit;

    public string GasUnit => isUsFirst ? "CCF" : "m³";

    /// <summary>A volume in <see cref="GasUnit"/>.</summary>
    public double InGasUnit(double cubicMetres) => isUsFirst ? cubicMetres / BilledUnit.HundredCubicFeet.CubicMetres()!.Value : cubicMetres;

    /// <summary>Glass, in kg or in lb where US units stand first.</summary>
    public string Glass(double kilograms) => isUsFirst ? Number(kilograms / EnergyUnits.KilogramsPerPound, 1) + Space + "lb" : Number(kilograms, 1) + Space + "kg";

    public string CarbonDioxide(double kilograms) => Number(kilograms, 0) + Space + "kg";

    public string Hours(double hours) => Number(hours, 1) + Space + "h";

    public string Percent(double share) => Number(share * 100, 1) + Space + "%";

    /// <summary>A number with its unit and a stated number of decimals, e.g. the quantity of a bill.</summary>
    public string Quantity(decimal quantity, string unit, int decimals) => Number(quantity, decimals) + Space + unit;

    public string Number(double value, int decimals) =>
        double.IsFinite(value) && Math.Abs(value) < 1e15 ? Number((decimal)value, decimals) : value.ToString("R", CultureInfo.InvariantCulture);

    public string Number(decimal value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        var plain = Math.Abs(rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var (whole, rest) = plain.IndexOf('.', StringComparison.Ordinal) is >= 0 and var point ? (plain[..point], habit.Decimal + plain[(point + 1)..]) : (plain, "");
        if (whole.Length >= habit.GroupsFromDigits)
            for (var at = whole.Length - 3; at > 0; at -= 3) whole = whole.Insert(at, habit.Group);
        return (rounded < 0 ? Minus : "") + whole + rest;
    }

    /// <summary>For a spreadsheet: the same digits without anything between thousands.</summary>
    public string Plain(decimal value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace(".", habit.Decimal, StringComparison.Ordinal);

    /// <summary>A day with its month in words, as 03/04 is another day elsewhere.</summary>
    public string Day(LocalDate day) => Write(day, habit.MonthFirst ? "MMM d, uuuu" : "d MMM uuuu");

    public string ShortDay(LocalDate day) => Write(day, habit.MonthFirst ? "ddd, MMM d" : "ddd d MMM");

    public static string Month(LocalDate day) => Write(day, "MMMM uuuu");

    public static string Year(LocalDate day) => Write(day, "uuuu");

    /// <summary>A day and time of the studio's clock.</summary>
    public string Moment(Instant at, DateTimeZone zone)
    {
        var local = at.InZone(zone).LocalDateTime;
        return $"{Day(local.Date)}, {LocalTimePattern.CreateWithInvariantCulture(habit.Culture == "en-US" ? "h:mm tt" : "HH:mm").Format(local.TimeOfDay)}";
    }

    static string Write(LocalDate day, string pattern) => LocalDatePattern.CreateWithInvariantCulture(pattern).Format(day);

    static int DecimalsOf(decimal value) => (value / 1.0000000000000000000000000000m).Scale;
}
