using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Energy of a kilogram at some throughput.</summary>
/// <param name="Label">The month, or empty for a point of the line.</param>
/// <param name="KilogramsPerDay">Mean of all days, free ones included. A point of the line is at exactly this throughput.</param>
public sealed record KilogramAt(string Label, double KilogramsPerDay, double KilogramsPerDayLow95, double KilogramsPerDayHigh95, string PerDayText, Interval KwhPerKilogram);

/// <summary>What throughput alone explains: a furnace's own line over the last ninety days, and where its months lie.</summary>
/// <param name="Line">In order of throughput, with the line's 95 % interval.</param>
/// <param name="Months">Earlier months, oldest first; by the furnace's own days, from one melt to the next.</param>
/// <param name="Here">This month; null until it has days enough.</param>
public sealed record KilogramCurve(string FurnaceName, IReadOnlyList<KilogramAt> Line, IReadOnlyList<KilogramAt> Months, KilogramAt? Here);

/// <summary>Makes the curve of the first furnace that has one.</summary>
sealed class KilogramCurves(StudioPlan plan, MeltingBook melting, StudioFormat format)
{
    const int LineDays = 90, EarlierMonths = 3, Points = 16;

    /// <param name="first">First of a month.</param>
    /// <param name="until">Its end, or now.</param>
    /// <returns>Null where no furnace's days make a line.</returns>
    public KilogramCurve? Of(LocalDate first, Instant until, Instant now)
    {
        foreach (var furnace in plan.Appliances.Where(a => a.Options.Pot is not null))
            if (Of(furnace, first, until, now) is { } curve) return curve;
        return null;
    }

    KilogramCurve? Of(AppliancePlan furnace, LocalDate first, Instant until, Instant now)
    {
        if (melting.Of(furnace, until - Duration.FromDays(LineDays), until, now)?.Line is not { NextKilogram: not null } line) return null;
        var months = Enumerable.Range(1, EarlierMonths).Reverse().Select(back => first.PlusMonths(-back)).Select(month => Month(furnace, month, Start(month.PlusMonths(1)), now)).OfType<KilogramAt>().ToList();
        var here = Month(furnace, first, until, now);
        var all = months.Append(here).OfType<KilogramAt>().Select(m => m.KilogramsPerDay).Append(line.KilogramsPerDay).ToList();
        var (low, high) = (all.Min() * 0.75, all.Max() * 1.25);
        var points = Enumerable.Range(0, Points).Select(i => low + (high - low) * i / (Points - 1))
            .Select(x => line.At(x) is { } at ? new KilogramAt("", x, x, x, PerDay(x), format.PerKilogramShown(at)) : null).OfType<KilogramAt>().ToList();
        return new KilogramCurve(furnace.Name, points, months, here);
    }

    KilogramAt? Month(AppliancePlan furnace, LocalDate first, Instant end, Instant now) =>
        melting.Of(furnace, Start(first), end, now)?.Line is { } line
            ? new KilogramAt(StudioFormat.Month(first), line.KilogramsPerDay, line.PerDay.Low95, line.PerDay.High95, PerDay(line.KilogramsPerDay), format.PerKilogramShown(line.Gross))
            : null;

    string PerDay(double kilograms) => $"{format.Glass(kilograms)} a day";

    Instant Start(LocalDate day) => plan.Zone.AtStartOfDay(day).ToInstant();
}
