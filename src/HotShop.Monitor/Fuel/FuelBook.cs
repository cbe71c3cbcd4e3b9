using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using NodaTime;

namespace HotShop.Monitor.Fuel;

public enum FuelStep { Hour, Day, Month }

/// <summary>Adds up energy from hour rows. Hours that are not closed are computed on the spot, so a question is always answered with what is true now.</summary>
public sealed class FuelBook(StudioPlan plan, IReadingHistory history)
{
    readonly StudioGas gas = new(plan.Configuration.Gas);
    readonly PriceList prices = new(plan.Configuration.Prices);

    public StudioGas Gas => gas;
    public PriceList Prices => prices;

    /// <summary>Use in [from, to) by hour, day or month of the studio's zone; stretches at the ends are cut to the question.</summary>
    /// <param name="now">Time not yet passed is not missing.</param>
    public IReadOnlyList<FuelUse> Use(AppliancePlan appliance, Instant from, Instant to, FuelStep step, Instant now)
    {
        var edges = Calendar.Edges(from, Instant.Min(to, Instant.Max(from, now)), step, plan.Zone);
        if (edges.Count < 2) return [];
        var lines = Lines(appliance, edges[0], edges[^1]);
        return [.. edges.Zip(edges.Skip(1), (start, end) => Sum(lines, start, end))];
    }

    /// <summary>The same over one stretch.</summary>
    public FuelUse Between(AppliancePlan appliance, Instant from, Instant to, Instant now)
    {
        var end = Instant.Max(from, Instant.Min(to, now));
        return Sum(Lines(appliance, from, end), from, end);
    }

    List<(FuelSource Source, IReadOnlyList<HourRow> Hours)> Lines(AppliancePlan appliance, Instant from, Instant to) =>
        [.. FuelSource.Of(appliance).Select(s => (s, history.Hours(s.Channel, from - Duration.FromHours(1), to)))];

    FuelUse Sum(List<(FuelSource Source, IReadOnlyList<HourRow> Hours)> lines, Instant from, Instant to)
    {
        double measured = 0, estimated = 0, volume = 0, carbonDioxide = 0, coveredSeconds = 0;
        decimal? cost = 0m;
        var resets = 0;
        foreach (var (source, hours) in lines)
            foreach (var whole in hours)
            {
                if (Cut(source, whole, from, to) is not { } hour) continue;
                var (energy, cubicMetres) = source.EnergyOf(hour, gas);
                if (source.IsMeasured) (measured, coveredSeconds) = (measured + energy, coveredSeconds + hour.CoveredSeconds);
                else estimated += energy;
                volume += cubicMetres ?? 0;
                if (source.Kind == EnergyKind.Gas) carbonDioxide += energy * gas.Fuel.CarbonDioxideKilogramsPerKilowattHour;
                cost += prices.CostOf(source.Kind, energy, whole.Hour.InZone(plan.Zone).Date);
                resets += hour.Resets;
            }
        var asked = (to - from).TotalSeconds * Math.Max(1, lines.Count(l => l.Source.IsMeasured));
        return new FuelUse(from, to, measured, estimated, volume, cost is { } amount ? Math.Round(amount, 2, MidpointRounding.ToEven) : null, carbonDioxide,
            asked > 0 ? Math.Min(1, coveredSeconds / asked) : 0, resets);
    }

    /// <summary>The part of an hour row that lies in [from, to): from the raw readings, as an hour is not burnt evenly.</summary>
    HourRow? Cut(FuelSource source, HourRow whole, Instant from, Instant to)
    {
        var start = Instant.Max(whole.Hour, from);
        var end = Instant.Min(whole.Hour + Duration.FromHours(1), to);
        if (end <= start) return null;
        return end - start == Duration.FromHours(1) ? whole : history.Part(source.Channel, start, end);
    }
}
