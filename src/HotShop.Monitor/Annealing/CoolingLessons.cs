using System.Collections.Concurrent;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>What earlier coolings of an annealer teach about the next: their time constants, from the moment the heat went off to the target.</summary>
sealed class CoolingLessons(IReadingHistory history)
{
    /// <summary>Coolings further back were of another load, another lining or another season.</summary>
    static readonly Duration LookBack = Duration.FromDays(42);

    const int Most = 10;

    /// <summary>A cooling that began less far above the target teaches little. K.</summary>
    const double LeastFallKelvin = 8;

    // A cooling that is over teaches the same for ever; what came late would change it, and is worth no second look.
    readonly ConcurrentDictionary<(string Appliance, Instant Hour, double Target, double Room), double?> known = new();

    /// <returns>Time constants in hours, newest first, of the coolings that came to the target before now.</returns>
    public IReadOnlyList<double> Of(AppliancePlan annealer, double targetCelsius, double roomCelsius, Instant now)
    {
        var channel = annealer.Channel(Quantity.Temperature)!;
        var hours = history.Hours(channel, now - LookBack, now);
        var constants = new List<double>();
        for (var i = hours.Count - 1; i > 0 && constants.Count < Most; i--)
        {
            // The hour in which it came through the target from above.
            if (!(hours[i].Min <= targetCelsius && hours[i - 1].Min > targetCelsius)) continue;
            var key = (annealer.Id, hours[i].Hour, targetCelsius, Math.Round(roomCelsius));
            if (known.GetOrAdd(key, _ => Constant(annealer, channel, hours[i].Hour, targetCelsius, roomCelsius)) is { } constant) constants.Add(constant);
        }
        return constants;
    }

    double? Constant(AppliancePlan annealer, ChannelPlan channel, Instant hour, double targetCelsius, double roomCelsius)
    {
        var minutes = history.Minutes(channel, hour - Duration.FromHours(24), hour + Duration.FromHours(1));
        var down = minutes.FirstOrDefault(m => m.Minute >= hour && m.Mean <= targetCelsius);
        if (down is null) return null;
        var heat = HeatTrace.Of(annealer, history, hour - Duration.FromHours(24), down.Minute);
        if (heat.OffSince is not { } off || minutes.FirstOrDefault(m => m.Minute >= off) is not { } begin || begin.Mean < targetCelsius + LeastFallKelvin) return null;
        return CoolingTail.TimeConstant(begin.Mean, down.Mean, roomCelsius, (down.Minute - begin.Minute).TotalHours);
    }
}
