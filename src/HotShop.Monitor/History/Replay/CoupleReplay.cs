using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>A temperature that comes out differently, ready to be written.</summary>
sealed record ChangedTemperature(Series Series, ChannelPlan Channel, ImportedRow Row);

/// <summary>
/// Makes temperatures again of the stored voltages where the couple, or the channel of its terminals, was said to be another one since (<c>dated</c>).
/// Where nothing was said, the temperature that was made when the voltage came stands: a reading of the terminals that came later would only shift it within its noise.
/// </summary>
sealed class CoupleReplay(PlanHistory plans, SeriesBook series, IStoreReader store)
{
    public IEnumerable<ChangedTemperature> Run(Instant from, Instant to, PartTally tally)
    {
        var asRun = plans.AsRun;
        using var connection = store.Open();
        foreach (var voltages in series.All.Where(s => s.Unit == Quantities.Millivolt))
            foreach (var stretch in plans.Between(from, to))
            {
                if (stretch.Plan.Channels.Find(voltages.Channel) is not { Thermocouple: not null, ColdJunction: { } junction } channel) continue;
                if (asRun.Channel(voltages.Channel, stretch.From) is { } then && then.Thermocouple == channel.Thermocouple && then.ColdJunction == channel.ColdJunction) continue;
                if (series.Of(channel) is not { } temperatures || stretch.Plan.Channels.Find(junction) is not { } terminal || series.Of(terminal) is not { } terminals) continue;
                var stored = SampleRows.Every(connection, temperatures.Id, stretch.From.ToMicroseconds(), stretch.To.ToMicroseconds()).ToDictionary(s => s.At, s => (s.Value, s.Marks));
                foreach (var (at, millivolts, _) in SampleRows.Every(connection, voltages.Id, stretch.From.ToMicroseconds(), stretch.To.ToMicroseconds()))
                {
                    if (!stored.TryGetValue(at, out var kept)) continue;
                    tally.Checked++;
                    var moment = Columns.FromMicroseconds(at);
                    if (Temperatures.Of(channel, millivolts, Intake.NearestTerminals(connection, terminals.Id, moment)).Celsius is not { } celsius || celsius == kept.Value) continue;
                    tally.Differs(channel.Id, moment, string.Create(CultureInfo.InvariantCulture, $"{kept.Value:0.0} °C"), string.Create(CultureInfo.InvariantCulture, $"{celsius:0.0} °C"));
                    yield return new ChangedTemperature(temperatures, channel, new ImportedRow(at, celsius, kept.Marks & ~ReadingMarks.Implausible | Intake.Plausibility(channel, celsius), 0));
                }
            }
    }
}
