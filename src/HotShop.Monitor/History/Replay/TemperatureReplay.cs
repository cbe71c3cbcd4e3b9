using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>A temperature that comes out differently, ready to be written.</summary>
/// <param name="AsRead">Before its correction, to be kept beside it; null where it is there already, or nothing is corrected.</param>
sealed record ChangedTemperature(Series Series, ChannelPlan Channel, ImportedRow Row, double? AsRead);

/// <summary>
/// Makes temperatures again: of the stored voltages where the couple, or the channel of its terminals, was said to be another one since (<c>dated</c>), and by the
/// calibrations that the configuration has today, which carry dates of their own. Where nothing was said, what was read stands: a reading of the terminals that
/// came later would only shift it within its noise. A temperature that came from a file stands as it was written there.
/// </summary>
sealed class TemperatureReplay(PlanHistory plans, SeriesBook series, IStoreReader store)
{
    public IEnumerable<ChangedTemperature> Run(Instant from, Instant to, PartTally tally)
    {
        using var connection = store.Open();
        foreach (var one in series.All.Where(s => s.Unit == Quantity.Temperature.CanonicalUnit()))
            foreach (var stretch in plans.Between(from, to))
                if (stretch.Plan.Channels.Find(one.Channel) is { Quantity: Quantity.Temperature } channel)
                    foreach (var changed in Of(connection, one, channel, stretch, tally)) yield return changed;
    }

    IEnumerable<ChangedTemperature> Of(SqliteConnection connection, Series temperatures, ChannelPlan channel, PlanStretch stretch, PartTally tally)
    {
        var calibrated = plans.Today.Channels.Find(channel.Id) ?? channel;
        var asRead = Stored(connection, series.Find(channel.Id, Quantities.AsRead), stretch);
        var again = FromVoltages(connection, channel, stretch);
        if (again is null && asRead.Count == 0 && calibrated.Calibrations.All.Count == 0) yield break;
        foreach (var (at, value, marks) in SampleRows.Every(connection, temperatures.Id, stretch.From.ToMicroseconds(), stretch.To.ToMicroseconds()))
        {
            var wasRead = asRead.TryGetValue(at, out var kept) ? kept : (double?)null;
            var read = again is not null && again.TryGetValue(at, out var made) ? made : wasRead;
            if (read is null && (marks & ReadingMarks.Imported) != 0) continue;
            tally.Checked++;
            var moment = Columns.FromMicroseconds(at);
            var corrected = Temperatures.Corrected(calibrated, read ?? value, moment);
            var celsius = corrected ?? read ?? value;
            if (celsius == value) continue;
            tally.Differs(channel.Id, moment, string.Create(CultureInfo.InvariantCulture, $"{value:0.0} °C"), string.Create(CultureInfo.InvariantCulture, $"{celsius:0.0} °C"));
            var beside = (read ?? value) is var before && (corrected is not null || wasRead is not null) && before != wasRead ? before : (double?)null;
            yield return new ChangedTemperature(temperatures, channel, new ImportedRow(at, celsius, marks & ~ReadingMarks.Implausible | Intake.Plausibility(channel, celsius), 0), beside);
        }
    }

    /// <summary>What the voltages of a stretch make with the couple as it is said to have been; null where nothing else was said than when they came.</summary>
    Dictionary<long, double>? FromVoltages(SqliteConnection connection, ChannelPlan channel, PlanStretch stretch)
    {
        if (channel is not { Thermocouple: not null, ColdJunction: { } junction } || series.Find(channel.Id, Quantities.Millivolt) is not { } voltages) return null;
        if (plans.AsRun.Channel(channel.Id, stretch.From) is { } then && then.Thermocouple == channel.Thermocouple && then.ColdJunction == channel.ColdJunction) return null;
        if (stretch.Plan.Channels.Find(junction) is not { } terminal || series.Of(terminal) is not { } terminals) return null;
        var made = new Dictionary<long, double>();
        foreach (var (at, millivolts) in Stored(connection, voltages, stretch))
            if (Temperatures.Of(channel, millivolts, Intake.NearestTerminals(connection, terminals.Id, Columns.FromMicroseconds(at))).Celsius is { } celsius) made[at] = celsius;
        return made;
    }

    static Dictionary<long, double> Stored(SqliteConnection connection, Series? one, PlanStretch stretch) =>
        one is null ? [] : SampleRows.Every(connection, one.Id, stretch.From.ToMicroseconds(), stretch.To.ToMicroseconds()).ToDictionary(s => s.At, s => s.Value);
}
