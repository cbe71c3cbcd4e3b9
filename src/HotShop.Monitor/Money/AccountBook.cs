using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Pot;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Makes the owner's account of any span of days: the one place where page, CSV, JSON, PDF and mail get their numbers.</summary>
public sealed class AccountBook
{
    readonly StudioPlan plan;
    readonly UseBook uses;
    readonly PriceList prices;
    readonly Ledger ledger;
    readonly AccountDays days;
    readonly AccountLines lines;
    readonly AccountUnits units;
    readonly Forecast forecast;
    readonly KilogramCurves curves;
    readonly BillCheck billCheck;

    public AccountBook(StudioPlan plan, UseBook uses, FuelBook fuel, PotBook pots, MeltingBook melting, ModeHistory modes, SessionLog sessions, BillBook bills)
    {
        (this.plan, this.uses) = (plan, uses);
        Format = new StudioFormat(plan.Configuration);
        prices = fuel.Prices;
        ledger = new Ledger(prices, fuel.Gas, Format.Digits);
        days = new AccountDays(plan, prices, Format);
        lines = new AccountLines(Format);
        units = new AccountUnits(plan, pots, modes, new KilogramLine(plan, melting, Format), new SessionCosts(plan, sessions, Format), fuel.Gas, Format);
        curves = new KilogramCurves(plan, melting, Format);
        forecast = new Forecast(plan, prices, fuel.Gas, Format);
        billCheck = new BillCheck(bills, fuel.Gas, Format);
    }

    /// <summary>How the studio writes numbers, amounts and days.</summary>
    public StudioFormat Format { get; }

    /// <summary>The account of [first, last], both included, as far as it has come.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The last day is before the first, or the first has not begun.</exception>
    public Account Of(LocalDate first, LocalDate last, Instant now)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(last, first);
        var from = plan.Zone.AtStartOfDay(first).ToInstant();
        ArgumentOutOfRangeException.ThrowIfLessThan(now, from);
        var end = plan.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant();
        var until = Instant.Min(now, end);
        var spending = Spend(first, last, now, byPurpose: true);
        var kind = AccountSpans.KindOf(first, last);
        return new Account(
            new AccountSpan(plan.Configuration.Name, first, last, kind, AccountSpans.Title(first, last, Format), plan.Configuration.Zone, from, until,
                Format.Moment(until, plan.Zone), now < end, Format.Currency, Format.Culture),
            spending.Cost is { } cost ? Format.Shown(cost, spending.CostUncertainty) : null,
            Format.EnergyShown(spending.Energy), Format.EnergyShown(spending.EnergyOf(EnergyKind.Gas)), Format.EnergyShown(spending.EnergyOf(EnergyKind.Electricity)),
            Format.GasShown(spending.GasVolume), Format.PercentFigure(spending.MeasuredShare),
            days.Of(spending, now), kind == SpanKind.Year ? Months(spending, now) : [], lines.Of(spending), days.Where(spending), days.Missing(spending), days.Unmeasured(spending),
            units.Costs(spending, from, until, now), units.CarbonDioxide(spending), lines.InForce(prices, first, LocalDate.Min(last, until.InZone(plan.Zone).Date)),
            Comparisons(spending, now), Bills(first, last, now), kind == SpanKind.Month && now < end ? forecast.Of(spending, Spend(first.PlusMonths(-1), first.PlusDays(-1), now), last, now) : null)
        {
            Doubts = new AccountDoubts(Format).Of(spending),
            Curve = kind == SpanKind.Month ? curves.Of(first, until, now) : null,
        };
    }

    /// <summary>Bills that share a day with [first, last], each beside the meters.</summary>
    public IReadOnlyList<BillComparison> Bills(LocalDate first, LocalDate last, Instant now) => billCheck.Of(first, last, (from, to) => Spend(from, to, now, isForBill: true));

    /// <summary>Whole months are worked out, as blocks and bills have them, and the asked days taken from them.</summary>
    /// <param name="byPurpose">For where it went; what is only compared does without.</param>
    /// <param name="isForBill">Ask for the interval of the whole stretch, though it is not made of months.</param>
    internal Spending Spend(LocalDate first, LocalDate last, Instant now, bool byPurpose = false, bool isForBill = false)
    {
        var (monthFirst, monthLast) = (first.With(DateAdjusters.StartOfMonth), last.With(DateAdjusters.EndOfMonth));
        var (all, hours) = uses.Days(monthFirst, monthLast, now, byPurpose);
        var charges = all.Count == 0 ? [] : ledger.Of(all.SelectMany(d => d.Shares), monthFirst, all[^1].Day);
        return new Spending(first, last, [.. all.Where(d => d.Day >= first && d.Day <= last)], [.. charges.Where(c => c.Day >= first && c.Day <= last)],
            isForBill || (first == monthFirst && last == monthLast) ? uses.Months(first, last, now) : [], hours);
    }

    List<AccountMonth> Months(Spending year, Instant now)
    {
        var months = new List<AccountMonth>();
        foreach (var use in year.Months)
        {
            var first = use.From.InZone(plan.Zone).Date;
            var last = first.With(DateAdjusters.EndOfMonth);
            var month = new Spending(first, last, [.. year.Days.Where(d => d.Day >= first && d.Day <= last)], [.. year.Charges.Where(c => c.Day >= first && c.Day <= last)], [use], []);
            months.Add(new AccountMonth(first, StudioFormat.Month(first), month.Cost is { } cost ? Format.Shown(cost, month.CostUncertainty) : null, Format.EnergyShown(month.Energy), days.Where(month),
                Format.PercentFigure(month.MeasuredShare), plan.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant() > now));
        }
        return months;
    }

    /// <summary>While the span is under way it is compared with the same days of the earlier ones: until yesterday, as today is not over.</summary>
    List<AccountComparison> Comparisons(Spending spending, Instant now)
    {
        if (spending.Days.Count == 0) return [];
        var isUnderWay = plan.Zone.AtStartOfDay(spending.Last.PlusDays(1)).ToInstant() > now;
        var reached = isUnderWay ? spending.Days[^1].Day.PlusDays(-1) : spending.Last;
        if (reached < spending.First) return [];
        var ours = isUnderWay ? spending.Until(reached) : spending;
        var compared = new List<AccountComparison>();
        foreach (var (first, last) in AccountSpans.Earlier(spending.First, spending.Last))
        {
            var place = isUnderWay ? AccountSpans.SamePlace(spending.First, reached, first, last) : last;
            var theirs = Spend(first, last, now).Until(place);
            if (theirs.Energy.Value > 0) compared.Add(Comparison(ours, theirs));
        }
        return compared;
    }

    AccountComparison Comparison(Spending ours, Spending theirs)
    {
        var (energy, before) = (ours.Energy.Value, theirs.Energy.Value);
        var change = new SpanDifference(ours, theirs, uses.MeterRelative);
        return new AccountComparison(
            AccountSpans.Title(theirs.First, theirs.Last, Format), theirs.First, theirs.Last, theirs.Cost is { } cost ? Format.Shown(cost, theirs.CostUncertainty) : null,
            change.Cost is { } difference ? Format.DifferenceShown(difference, change.CostUncertainty) : null, change.CostShare is { } share ? Format.PercentShown(share) : null,
            Format.EnergyShown(theirs.Energy), Format.EnergyDifferenceShown(change.Energy with { Value = energy - before }), Format.PercentFigure(theirs.MeasuredShare));
    }
}
