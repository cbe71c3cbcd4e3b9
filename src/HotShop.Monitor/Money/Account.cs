using HotShop.Monitor.Fuel;
using NodaTime;

namespace HotShop.Monitor.Money;

public enum SpanKind { Day, Week, Month, Year, Other }

/// <summary>
/// Everything the owner is shown of a span of days: page, CSV, JSON and PDF are made from this and compute nothing. Amounts include taxes unless said
/// otherwise; parts make the total to the currency's smallest unit. Intervals are 95 %.
/// </summary>
/// <param name="Cost">What was used and what stands, from the prices in force; null where no day has a price. Without the days in <paramref name="MissingPrices"/>.</param>
/// <param name="EnergyKwh">Gas (gross) and electricity.</param>
/// <param name="MeasuredShare">Part of the time that a meter or sensor speaks for.</param>
/// <param name="Lines">As a bill has them: energy by price and block, riders, standing charge, taxes. They make the cost.</param>
/// <param name="Where">By appliance, purpose, kind of energy and origin, with the standing charges: they make the cost too.</param>
/// <param name="Months">For a year: its months; else empty.</param>
public sealed record Account(
    AccountSpan Span, AmountInterval? Cost, Interval EnergyKwh, Interval GasKwh, Interval ElectricityKwh, Interval GasCubicMetres, Figure MeasuredShare,
    IReadOnlyList<AccountDay> Days, IReadOnlyList<AccountMonth> Months, IReadOnlyList<AccountLine> Lines, IReadOnlyList<AccountWhere> Where,
    IReadOnlyList<MissingPrice> MissingPrices, IReadOnlyList<DayRange> Unmeasured, UnitCosts PerUnit, CarbonDioxide CarbonDioxide,
    IReadOnlyList<PriceInForce> Prices, IReadOnlyList<AccountComparison> Comparisons, IReadOnlyList<BillComparison> Bills, AccountForecast? Forecast)
{
    /// <summary>Where the doubt of the energy comes from, largest first; for spans of whole months.</summary>
    public IReadOnlyList<AccountDoubt> Doubts { get; init; } = [];

    /// <summary>For a month whose furnace has a line of its own.</summary>
    public KilogramCurve? Curve { get; init; }
}

/// <summary>The days an account covers.</summary>
/// <param name="Last">Included.</param>
/// <param name="Until">End of what is counted: the end of the last day, or now while the span is under way.</param>
/// <param name="Title">E.g. October 2026.</param>
public sealed record AccountSpan(
    string Studio, LocalDate First, LocalDate Last, SpanKind Kind, string Title, string Zone, Instant From, Instant Until, string UntilText, bool IsUnderWay, string Currency, string Culture);

/// <summary>A day.</summary>
/// <param name="Hours">Its length by the studio's clock: 23, 24 or 25; less while it runs.</param>
/// <param name="Amount">Standing charge included; null where a kind of energy that was used has no price.</param>
/// <param name="Standing">The day's part of the standing charges.</param>
/// <param name="IsUnmeasured">For more than half of its time nothing was measured.</param>
/// <param name="PriceChanges">New prices hold from this day on.</param>
public sealed record AccountDay(
    LocalDate Day, string Label, double Hours, AmountInterval? Amount, Amount Standing, Interval EnergyKwh, Figure MeasuredShare, bool IsUnmeasured, bool IsUnderWay, bool PriceChanges,
    int MeterResets, IReadOnlyList<AccountPart> Parts);

/// <summary>What an appliance used on a day, of one kind of energy, known in one way, for one purpose.</summary>
/// <param name="EnergyKwh">Gas: gross.</param>
/// <param name="GasCubicMetres">At base conditions; 0 where no meter counted.</param>
/// <param name="Amount">Null where no price is known.</param>
public sealed record AccountPart(
    string Appliance, string ApplianceName, EnergyKind Kind, Origin Origin, Purpose Purpose, string PurposeText, Interval EnergyKwh, Interval GasCubicMetres, AmountInterval? Amount);

/// <summary>A month of a year's account.</summary>
public sealed record AccountMonth(LocalDate First, string Label, AmountInterval? Amount, Interval EnergyKwh, IReadOnlyList<AccountWhere> Where, Figure MeasuredShare, bool IsUnderWay);

/// <summary>A line as on a bill.</summary>
/// <param name="Calculation">The formula with its numbers, e.g. 1.234,5 kWh × 0,11 €.</param>
public sealed record AccountLine(EnergyKind Kind, LineKind LineKind, string Name, string Calculation, AmountInterval Amount);

/// <summary>Where it went.</summary>
/// <param name="Appliance">Null for the standing charges.</param>
/// <param name="Share">Of the cost.</param>
public sealed record AccountWhere(
    string? Appliance, string Name, Purpose? Purpose, string PurposeText, EnergyKind Kind, Origin? Origin, Interval EnergyKwh, AmountInterval? Amount, Interval Share);

/// <summary>Days on which energy was used that has no price.</summary>
public sealed record MissingPrice(EnergyKind Kind, LocalDate First, LocalDate Last, Interval EnergyKwh, string Text);

/// <summary>One reason why the energy may be off.</summary>
/// <param name="Name">As people say it: heating value, class of shop/meter.</param>
/// <param name="EnergyKwhHalfWidth95">How far the energy may be off for this reason alone.</param>
/// <param name="Share">Of the whole doubt: squares add up, so these make 1 (GUM, JCGM 100:2008, 5.1.2).</param>
public sealed record AccountDoubt(EnergyKind Kind, string Name, Figure EnergyKwhHalfWidth95, Figure Share);

/// <summary>Days in a row.</summary>
public sealed record DayRange(LocalDate First, LocalDate Last, int Days, string Text);

/// <summary>What a kilogram, an hour and a person cost. Null where there is nothing to divide by.</summary>
/// <param name="PerHour">Of the days that were measured for more than half of their time.</param>
/// <param name="PerDay">The same for 24 hours.</param>
public sealed record UnitCosts(AmountInterval? PerHour, AmountInterval? PerDay, PerKilogram? PerKilogram, PerGloryHoleHour? PerGloryHoleHour, IReadOnlyList<SessionCost> Sessions, IReadOnlyList<PersonCost> Persons);

/// <summary>Of all glass charged in the span, by all energy of the furnaces that have a pot.</summary>
/// <param name="ExpectedKwhPerKilogram">What the furnace's own line gives at this throughput; null until enough days are known.</param>
/// <param name="ExpectedText">In words: what it would have been at the same throughput, or why that is not known.</param>
public sealed record PerKilogram(Interval GlassKilograms, AmountInterval? Cost, Interval EnergyKwhPerKilogram, Interval? ExpectedKwhPerKilogram, string ExpectedText)
{
    /// <summary>Melting efficiency: heat that the glass itself took up over all energy burnt; null where a glass's heat is not known.</summary>
    public Interval? Efficiency { get; init; }
}

/// <summary>Of the hours in which a glory hole was in the mode working; all its energy, heat-up included.</summary>
public sealed record PerGloryHoleHour(Figure Hours, AmountInterval? Cost, Interval EnergyKwhPerHour);

/// <summary>A session of a renter or a class on an appliance, and what that appliance's energy cost in its time.</summary>
public sealed record SessionCost(string Id, string Who, string Appliance, string ApplianceName, Instant From, Instant To, string WhenText, Figure Hours, Interval EnergyKwh, AmountInterval? Amount);

public sealed record PersonCost(string Who, int Sessions, Figure Hours, Interval EnergyKwh, AmountInterval? Amount);

/// <summary>Carbon dioxide, and what it was computed with.</summary>
/// <param name="Sources">A line for each kind of energy: factor, source and year, or that it is left out.</param>
public sealed record CarbonDioxide(Interval Kilograms, IReadOnlyList<CarbonDioxideSource> Sources);

public sealed record CarbonDioxideSource(EnergyKind Kind, Interval Kilograms, double? KilogramsPerKwh, string? Source, int? Year, string Text);

/// <summary>A price list that held in the span.</summary>
/// <param name="Texts">A line for each price, rider, standing charge and tax.</param>
public sealed record PriceInForce(EnergyKind Kind, LocalDate From, string FromText, IReadOnlyList<string> Texts);

/// <summary>The same days of an earlier span.</summary>
/// <param name="Against">E.g. "September 2026", or "1 to 12 September 2026" while the span is under way.</param>
public sealed record AccountComparison(string Against, LocalDate First, LocalDate Last, AmountInterval? Cost, AmountInterval? Difference, Interval? DifferenceShare, Interval EnergyKwh, Interval EnergyDifferenceKwh,
    Figure MeasuredShare);

/// <summary>A bill beside what the meters say of the same days.</summary>
/// <param name="EnergyDifferenceKwh">Meters less bill.</param>
/// <param name="IsWithinMeters">The bill lies in the 95 % interval of the meters.</param>
/// <param name="IsNotExplained">They differ by more than 5 % (common practice) and the interval does not cover it.</param>
/// <param name="Words">What that means, in a sentence.</param>
public sealed record BillComparison(
    string Id, LocalDate First, LocalDate Last, EnergyKind Kind, string QuantityText, Figure EnergyKwh, Amount? Amount, Interval? MetersKwh, AmountInterval? MetersAmount,
    Interval? EnergyDifferenceKwh, Interval? DifferenceShare, bool? IsWithinMeters, bool IsNotExplained, string Words);

/// <summary>Where a month under way heads.</summary>
/// <param name="PerDay">What a coming day is taken to cost.</param>
/// <param name="BasedOnDays">Whole measured days it was made from.</param>
public sealed record AccountForecast(AmountInterval Cost, Interval EnergyKwh, AmountInterval PerDay, AmountInterval PerDayInterval, int BasedOnDays, string Words);
