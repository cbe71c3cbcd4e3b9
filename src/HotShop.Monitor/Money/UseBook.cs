using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Pot;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>The studio's use by day, its parts told apart by the mode that was in force when they were used.</summary>
public sealed class UseBook(StudioPlan plan, StudioFuel fuel, ModeHistory modes, MeltingBook melting)
{
    static readonly Duration LineStretch = Duration.FromDays(90);
    static readonly Dictionary<string, double> noHolding = [];

    /// <summary>Days that have begun, of [first, last].</summary>
    /// <param name="byPurpose">Tell purposes apart, by the hour; without, a day's share is one and the hours stay empty, which is many times quicker.</param>
    /// <returns>The days, and the hours they were made from.</returns>
    public (IReadOnlyList<DayUse> Days, IReadOnlyList<StudioUse> Hours) Days(LocalDate first, LocalDate last, Instant now, bool byPurpose)
    {
        var (from, to) = Span(first, last, now);
        if (to <= from) return ([], []);
        var hours = byPurpose ? fuel.Use(from, to, FuelStep.Hour, now) : [];
        var split = new PurposeSplit(plan, hours, a => modes.Of(a, from, to), byPurpose ? HoldingKilowatts(from, to, now) : noHolding);
        return ([.. fuel.Use(from, to, FuelStep.Day, now).Select(day =>
        {
            var date = day.From.InZone(plan.Zone).Date;
            // A nought would be said to be measured where nothing was.
            return new DayUse(date, day.To - day.From, [.. day.Shares.Where(s => s.KilowattHours.Value > 0).SelectMany(s => split.Of(date, s))], day.Gas, day.Electricity, day.MeasuredShare, day.Resets) { GasVolume = day.GasVolume };
        })], hours);
    }

    /// <summary>Relative standard uncertainty of the studio's meter of a kind, which is the same in all months; 0 where no one meter counts all of it.</summary>
    internal double MeterRelative(EnergyKind kind) => fuel.Meters.Main(kind) is { } main ? FuelDoubt.Of(main.Channel) : 0;

    /// <summary>Use of [first, last] month by month, each with an interval of its own: errors of one meter do not average out over the days.</summary>
    public IReadOnlyList<StudioUse> Months(LocalDate first, LocalDate last, Instant now)
    {
        var (from, to) = Span(first, last, now);
        return to <= from ? [] : fuel.Use(from, to, FuelStep.Month, now);
    }

    /// <summary>Of the furnaces whose own line is known, from the span and what went before it: a month alone has few days.</summary>
    Dictionary<string, double> HoldingKilowatts(Instant from, Instant to, Instant now)
    {
        var since = Instant.Min(from, to - LineStretch);
        return plan.Appliances.Where(a => a.Options.Pot is not null).Select(a => (a.Id, melting.Of(a, since, to, now)?.Line))
            .Where(f => f.Line is not null).ToDictionary(f => f.Id, f => f.Line!.Holding.Value);
    }

    (Instant From, Instant To) Span(LocalDate first, LocalDate last, Instant now) =>
        (plan.Zone.AtStartOfDay(first).ToInstant(), Instant.Min(now, plan.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant()));
}
