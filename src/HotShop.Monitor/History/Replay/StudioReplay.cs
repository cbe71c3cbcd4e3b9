using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.History.Figures;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.History.Replay;

/// <summary>
/// Computes again what follows from the stored readings and the logbook, with the configuration that was in force, and says what comes out differently.
/// Applied, it writes derived rows again: temperatures from thermocouple voltages, hour and minute rows, and what is said of past days. It notifies nobody, and never touches
/// readings as they came, the logbook or the history of alarms.
/// </summary>
sealed class StudioReplay(
    StudioPlan plan, PlanHistory plans, IStoreReader store, SeriesBook series, IReadingHistory history, DayFigures figures, AlarmReplay alarms, ArrivalBook arrivals, HourlyMove move,
    IStoreWriter writer, TimeProvider clock)
{
    const int AtOnce = 1000;

    /// <param name="from">Down to its hour.</param>
    /// <param name="to">Down to its hour, and not beyond the last that has ended.</param>
    public async Task<ReplayReport> Run(Instant from, Instant to, bool apply, CancellationToken stop)
    {
        var began = clock.GetTimestamp();
        var now = clock.GetUtcNow().ToInstant();
        (from, to) = (HourOf(from), Instant.Min(HourOf(to), HourOf(now)));
        // Hours that wait to be added up are added up first: an import beside no service leaves them waiting.
        if (apply) await move.Run(now, stop);
        var (couples, temperatures) = Temperatures(from, to);
        if (apply) await Apply(temperatures, now, stop);
        // The alarms on one processor, the sums on another.
        var deciding = Task.Run(() => alarms.Run(from, to, stop), stop);
        var (hours, minutes, changed) = Hours(from, to, stop);
        if (apply) await Apply(changed, now, stop);
        var stated = await Days(from, to, changed, now, apply, stop);
        return new ReplayReport(from, to, ConfigurationChanges.Within(plans, from, to), [couples, hours, minutes, stated, await deciding], clock.GetElapsedTime(began).TotalSeconds, apply);
    }

    static Instant HourOf(Instant at) => Columns.FromMicroseconds(DirtyHours.HourOf(at.ToMicroseconds()));

    (ReplayPart Part, List<ChangedTemperature> Changed) Temperatures(Instant from, Instant to)
    {
        var tally = new PartTally("temperatures from voltages and calibrations");
        var changed = new TemperatureReplay(plans, series, store).Run(from, to, tally).ToList();
        return (tally.Part, changed);
    }

    (ReplayPart Hours, ReplayPart Minutes, List<ChangedHour> Changed) Hours(Instant from, Instant to, CancellationToken stop)
    {
        PartTally hours = new("hours"), minutes = new("minutes");
        var replay = new HourReplay(plans, store);
        var changed = series.All.SelectMany(s => replay.Run(s, from, to, hours, minutes, stop)).ToList();
        return (hours.Part, minutes.Part, changed);
    }

    async Task<ReplayPart> Days(Instant from, Instant to, List<ChangedHour> changed, Instant now, bool apply, CancellationToken stop)
    {
        var tally = new PartTally("figures of days");
        // Days that lie in the span as a whole.
        var first = from.InZone(plan.Zone).Date;
        if (plan.Zone.AtStartOfDay(first).ToInstant() < from) first = first.PlusDays(1);
        var last = to.InZone(plan.Zone).Date.PlusDays(-1);
        if (last < first) return tally.Part;
        var fuel = new FuelBook(plan, apply ? history : new RecomputedHours(history, changed), plans);
        var computed = figures.Of(fuel, first, last, now).ToList();
        var stated = StatedFigures.Read(store, first, last);
        var days = stated.Keys.Select(k => k.Day).ToHashSet();
        var seen = new HashSet<(LocalDate, string, string)>();
        foreach (var figure in computed)
        {
            if (!days.Contains(figure.Day)) continue;
            tally.Checked++;
            seen.Add((figure.Day, figure.Appliance, figure.Name));
            var was = stated.TryGetValue((figure.Day, figure.Appliance, figure.Name), out var value) ? value : (double?)null;
            if (was != figure.Value) tally.Differs($"{figure.Appliance} {figure.Name}", plan.Zone.AtStartOfDay(figure.Day).ToInstant(), was is { } w ? Number(w) : "nothing", Number(figure.Value));
        }
        foreach (var (key, value) in stated.Where(s => !seen.Contains(s.Key)))
            tally.Differs($"{key.Appliance} {key.Name}", plan.Zone.AtStartOfDay(key.Day).ToInstant(), Number(value), "nothing");
        tally.Left = Period.DaysBetween(first, last) + 1 - days.Count;
        if (apply) await writer.Write(scope => StatedFigures.Write(computed, first, last, scope), stop);
        return tally.Part;
    }

    static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>Temperatures take the place of those made with the wrong couple or correction; their hours are marked as any late reading's are.</summary>
    async Task Apply(List<ChangedTemperature> changed, Instant now, CancellationToken stop)
    {
        foreach (var one in changed.GroupBy(c => (c.Series, c.Channel)))
            foreach (var piece in one.Chunk(AtOnce))
                await writer.Write(scope =>
                {
                    var asRead = piece.Where(p => p.AsRead is not null).Select(p => new ImportedRow(p.Row.AtMicroseconds, p.AsRead!.Value, ReadingMarks.None, 0)).ToList();
                    if (asRead.Count > 0) arrivals.Import(series.FindOrMake(one.Key.Channel.Id, Wire.Quantities.AsRead, scope), one.Key.Channel, asRead, rawBefore: long.MinValue, replace: true, (_, _, _) => { }, scope);
                    arrivals.Import(one.Key.Series, one.Key.Channel, [.. piece.Select(p => p.Row)], rawBefore: long.MinValue, replace: true, (_, _, _) => { }, scope);
                }, stop);
        if (changed.Count > 0) await move.Run(now, stop);
    }

    /// <summary>Marked, the hours are added up again by the one piece of code that adds up hours.</summary>
    async Task Apply(List<ChangedHour> changed, Instant now, CancellationToken stop)
    {
        foreach (var piece in changed.Chunk(AtOnce))
            await writer.Write(scope =>
            {
                foreach (var (one, hour, _) in piece) arrivals.Dirty.Mark(one.Id, hour.ToMicroseconds(), hour.ToMicroseconds(), scope);
            }, stop);
        if (changed.Count > 0) await move.Run(now, stop);
    }
}
