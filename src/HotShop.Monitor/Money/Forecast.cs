using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>
/// Where a month under way heads: what it has used, and for the days to come the mean of the last whole days. The interval is that of a sum of
/// further days after the known ones (<see cref="FurtherDraws"/>), and the doubt of what was used until now.
/// </summary>
/// <remarks>The days are taken as independent and normal. Working days and Sundays differ: that is in their scatter.</remarks>
sealed class Forecast(StudioPlan plan, PriceList prices, StudioGas gas, StudioFormat format)
{
    const int Fewest = 5, Most = 28;

    /// <param name="month">The month's days until now.</param>
    /// <param name="before">The month before it.</param>
    /// <returns>Null while fewer than five whole measured days with prices are known.</returns>
    public AccountForecast? Of(Spending month, Spending before, LocalDate last, Instant now)
    {
        if (month.Cost is not { } soFar || month.Days.Count == 0) return null;
        var today = month.Days[^1].Day;
        var known = before.Days.Concat(month.Days).Where(d => d.Day < today && d.Day >= today.PlusDays(-Most) && d.MeasuredShare >= 0.5).ToList();
        if (known.Count < Fewest) return null;
        var charges = before.Charges.Concat(month.Charges).ToList();
        var costs = known.Select(d => CostOf(d, today, charges)).ToList();
        if (costs.Any(c => c is null)) return null;
        var days = (plan.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant() - now).TotalDays;
        var perDay = FurtherDraws.Sum([.. costs.Select(c => (double)c!.Value)], 1);
        var cost = FurtherDraws.Sum([.. costs.Select(c => (double)c!.Value)], days);
        var energy = FurtherDraws.Sum([.. known.Select(d => (d.Gas + d.Electricity).Value)], days);
        var ahead = Enum.GetValues<EnergyKind>().Sum(k => Days(today.PlusDays(1), last).Sum(d => prices.InForce(k, d) is { } t ? t.StandingOf(d) * t.TaxFactor : 0));
        var total = LargestRemainder.Round(soFar + ahead + (decimal)cost.Value, format.Digits);
        var used = month.Energy;
        return new AccountForecast(
            format.Shown(total, (decimal)double.Hypot(cost.StandardUncertainty, (double)month.CostUncertainty)),
            format.EnergyShown(used + energy), format.Shown(LargestRemainder.Round((decimal)perDay.Value, format.Digits), (decimal)perDay.StandardUncertainty),
            format.Shown(LargestRemainder.Round((decimal)perDay.Value, format.Digits), (decimal)perDay.StandardUncertainty), known.Count,
            $"if the days to come are like the last {known.Count} measured ones");
    }

    /// <summary>A past day at today's prices, without its standing charge; null where a kind that it used has none.</summary>
    decimal? CostOf(DayUse day, LocalDate today, List<DayCharge> charges)
    {
        decimal sum = 0;
        foreach (var kind in Enum.GetValues<EnergyKind>())
        {
            var used = day.Shares.Where(s => s.Kind == kind).Sum(s => s.KilowattHours);
            if (used == 0) continue;
            // The last day's mean price knows which block the month has reached; a list that has just begun is asked itself.
            var paid = charges.LastOrDefault(c => c.Kind == kind && c.PerKilowattHour is not null && prices.InForce(kind, c.Day) == prices.InForce(kind, today))?.PerKilowattHour
                ?? prices.InForce(kind, today)?.PerKilowattHour(gas);
            if (paid is not { } price) return null;
            sum += (decimal)used * price;
        }
        return sum;
    }

    static IEnumerable<LocalDate> Days(LocalDate first, LocalDate last)
    {
        for (var day = first; day <= last; day = day.PlusDays(1)) yield return day;
    }
}
