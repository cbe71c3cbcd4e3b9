using HotShop.Monitor.Money;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Makes the strip of money from an account: days of a month, months of a year. Where nothing has a price it shows energy instead.</summary>
sealed class AccountStrip(Account account, StudioFormat format)
{
    /// <summary>From the ground up. Standing charges lie on top: nobody can burn less of them.</summary>
    static readonly Tone[] layers = [Tone.Holding, Tone.Melting, Tone.Other, Tone.GloryHoles, Tone.Annealers, Tone.Unexplained, Tone.Charges];

    static readonly Dictionary<Tone, string> names = new()
    {
        [Tone.Holding] = "holding", [Tone.Melting] = "melting", [Tone.Other] = "heat-up, idle", [Tone.GloryHoles] = "working",
        [Tone.Annealers] = "annealing", [Tone.Unexplained] = "not explained", [Tone.Charges] = "standing charges",
    };

    readonly bool isMoney = account.Cost is not null;

    public CostStrip Make()
    {
        var isYear = account.Span.Kind == SpanKind.Year;
        IReadOnlyList<StripStep> steps = isYear ? [.. Months()] : [.. Days()];
        var unit = $"{(isMoney ? format.Sign : "kWh")} a {(isYear ? "month" : "day")}";
        var title = $"{account.Span.Title}, {(isYear ? "a month" : "a day")} each: {(isMoney ? "what it cost" : "what was used")}, by purpose. The table below says the same.";
        return new(title, unit, steps, [.. Keys()], Now(isYear), isMoney ? format.Rough : value => format.Number(value, 0));
    }

    IEnumerable<StripStep> Days()
    {
        var worked = account.Days.Any(IsWorked);
        var byDay = account.Days.ToDictionary(d => d.Day);
        for (var day = account.Span.First; day <= account.Span.Last; day = day.PlusDays(1))
        {
            var known = byDay.GetValueOrDefault(day);
            if (known is null) { yield return Expected(day); continue; }
            var isClosed = worked && !known.IsUnmeasured && !known.IsUnderWay && !IsWorked(known);
            yield return Blank(day) with
            {
                Parts = PartsOf(known.Parts.Select(p => (p.Purpose, Amount: Worth(p.Amount, p.EnergyKwh))), isMoney ? known.Standing.Value : 0),
                Shown = isMoney ? known.Amount?.Text ?? "no price" : known.EnergyKwh.Text,
                IsUnmeasured = known.IsUnmeasured,
                IsClosed = isClosed,
                Note = known.IsUnmeasured ? known.EnergyKwh.Value > 0 ? "estimated" : "not measured" : isMoney && known.Amount is null ? "no price" : isClosed ? "no work" : null,
                Change = known.PriceChanges ? "new price" : null,
            };
        }
    }

    static bool IsWorked(AccountDay day) => day.Parts.Any(p => p.Purpose is Purpose.Working or Purpose.Melting && p.EnergyKwh.Value > 0);

    static StripStep Blank(LocalDate day) => new(day.Day.ToString(System.Globalization.CultureInfo.InvariantCulture), Row(day), [], null) { IsMain = day.DayOfWeek == IsoDayOfWeek.Monday };

    static string Row(LocalDate day) => LocalDatePattern.CreateWithInvariantCulture("ddd d").Format(day);

    /// <summary>A day to come: as the forecast takes it, made up like the days that are over.</summary>
    StripStep Expected(LocalDate day)
    {
        if (!isMoney || account.Forecast is not { } forecast) return Blank(day);
        var over = account.Days.Where(d => !d.IsUnderWay).SelectMany(d => d.Parts).GroupBy(p => WhereRow.ToneOf(p.Purpose)).ToDictionary(g => g.Key, g => g.Sum(p => p.Amount?.Value ?? 0));
        var all = over.Values.Sum();
        IReadOnlyList<StripPart> parts = all > 0
            ? [.. layers.Where(over.ContainsKey).Select(t => new StripPart(t, forecast.PerDay.Value * over[t] / all))]
            : [new StripPart(Tone.Other, forecast.PerDay.Value)];
        return Blank(day) with { Parts = parts, IsExpected = true, Range = (Math.Max(0, forecast.PerDayInterval.Low95), forecast.PerDayInterval.High95), Shown = forecast.PerDay.Text, Note = "expected" };
    }

    IEnumerable<StripStep> Months()
    {
        var byMonth = account.Months.ToDictionary(m => m.First);
        for (var month = account.Span.First; month <= account.Span.Last; month = month.PlusMonths(1))
        {
            var name = LocalDatePattern.CreateWithInvariantCulture("MMM").Format(month);
            var known = byMonth.GetValueOrDefault(month);
            if (known is null) { yield return new(name, name, [], null) { IsMain = true }; continue; }
            var isUnmeasured = known.MeasuredShare.Value < 0.5;
            yield return new(name, name, PartsOf(known.Where.Select(w => (w.Purpose, Worth(w.Amount, w.EnergyKwh))), 0), isMoney ? known.Amount?.Text : known.EnergyKwh.Text)
            {
                IsMain = true,
                IsUnmeasured = isUnmeasured && known.EnergyKwh.Value > 0,
                Note = isUnmeasured ? "mostly not measured" : known.IsUnderWay ? "so far" : null,
            };
        }
    }

    decimal Worth(AmountInterval? amount, Money.Interval energy) => isMoney ? amount?.Value ?? 0 : (decimal)energy.Value;

    static IReadOnlyList<StripPart> PartsOf(IEnumerable<(Purpose? Purpose, decimal Amount)> parts, decimal standing)
    {
        var sums = parts.GroupBy(p => WhereRow.ToneOf(p.Purpose)).ToDictionary(g => g.Key, g => g.Sum(p => p.Amount));
        sums[Tone.Charges] = sums.GetValueOrDefault(Tone.Charges) + standing;
        return [.. layers.Where(t => sums.GetValueOrDefault(t) > 0).Select(t => new StripPart(t, sums[t]))];
    }

    static IReadOnlyList<StripPart> PartsOf(IEnumerable<(Purpose Purpose, decimal Amount)> parts, decimal standing) => PartsOf(parts.Select(p => ((Purpose?)p.Purpose, p.Amount)), standing);

    /// <summary>From the top down, as the layers are seen.</summary>
    IEnumerable<StripKey> Keys()
    {
        var rows = WhereRow.Of(account.Where, format).GroupBy(r => r.Tone).ToDictionary(g => g.Key, g => g.ToList());
        foreach (var tone in layers.Reverse().Where(rows.ContainsKey))
            yield return new(tone, names[tone], isMoney ? format.Amount(rows[tone].Sum(r => r.Amount?.Value ?? 0)) : format.Energy(rows[tone].Sum(r => r.EnergyKwh.Value)));
    }

    double? Now(bool isYear)
    {
        if (!account.Span.IsUnderWay || account.Days.Count == 0) return null;
        var today = account.Days[^1];
        if (isYear) return today.Day.Month - 1 + (today.Day.Day - 1 + today.Hours / 24) / CalendarSystem.Iso.GetDaysInMonth(today.Day.Year, today.Day.Month);
        return Math.Min(account.Days.Count - 1 + today.Hours / 24, account.Days.Count);
    }
}
