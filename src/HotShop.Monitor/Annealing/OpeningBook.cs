using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Annealing;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>When each annealer can be opened, from its curve, its readings and how it cooled before.</summary>
sealed class OpeningBook(StudioPlan plan, IAnnealingCurves curves, IReadingHistory history, CoolingLessons lessons)
{
    /// <summary>The longest stretch of the tail that is fitted: the last time constant of a wall of layers is the one that counts.</summary>
    static readonly Duration LongestTail = Duration.FromHours(2);

    /// <summary>After the heat is off the air and the inner layer fall faster for a while.</summary>
    static readonly Duration Settling = Duration.FromMinutes(20);

    static readonly Duration LookBack = Duration.FromHours(48);

    readonly double targetCelsius = Limit.Parse(plan.Configuration.Handover.OpenBelow)?.Celsius ?? 50;

    /// <summary>All annealers with a temperature, in the order of the room.</summary>
    public IReadOnlyList<Opening> All(Instant now) =>
        [.. plan.Appliances.Where(a => a.Kind == ApplianceKind.Annealer && a.Channel(Quantity.Temperature) is not null).OrderBy(a => a.Options.Position).Select(a => Of(a, now))];

    /// <summary>As it could be said at a moment, of the present or the past.</summary>
    public Opening Of(AppliancePlan annealer, Instant now)
    {
        var channel = annealer.Channel(Quantity.Temperature)!;
        var minutes = history.MinutesAsOf(channel, now - LookBack, now).Select(m => new Sample(m.Minute + Duration.FromSeconds(30), m.Mean)).ToList();
        Opening Say(CoolingPhase phase, double? celsius = null, Instant? downSince = null, AnnealingCurve? curve = null, ExpectedMoment? expected = null, int earlier = 0) =>
            new(annealer.Id, annealer.Name, phase, celsius, targetCelsius, downSince, curve?.EndsAt, curve?.EndCelsius, expected, earlier);

        if (minutes.Count == 0 || now - minutes[^1].At > Duration.Max(channel.LongestGap, Duration.FromMinutes(3))) return Say(CoolingPhase.NotKnown);
        var celsius = minutes[^1].Value;
        if (celsius <= targetCelsius) return Say(CoolingPhase.Down, celsius, DownSince(minutes));
        var room = RoomTemperature.At(plan, history, now);
        var earlier = lessons.Of(annealer, targetCelsius, room.Value, now);
        if (curves.For(annealer.Id, now) is { } curve) return Say(CoolingPhase.OnCurve, celsius, curve: curve, expected: AfterCurve(curve, celsius, room, earlier, now), earlier: earlier.Count);
        var heat = HeatTrace.Of(annealer, history, now - LookBack, now);
        if (heat.IsHeldBySetpoint) return Say(heat.IsSetpointFalling ? CoolingPhase.OnCurve : CoolingPhase.Hot, celsius, earlier: earlier.Count);
        if (heat.OffSince is not { } off || !IsFalling(minutes, off)) return Say(CoolingPhase.Hot, celsius, earlier: earlier.Count);
        return Say(CoolingPhase.Cooling, celsius, expected: Better(Tail(minutes, off, room, now), OpeningForecast.FromLessons(minutes[^1].At, celsius, targetCelsius, room, earlier, now)), earlier: earlier.Count);
    }

    ExpectedMoment? Tail(List<Sample> minutes, Instant off, Estimate room, Instant now)
    {
        var from = Instant.Max(off + Settling, now - LongestTail);
        return OpeningForecast.FromTail([.. minutes.Where(m => m.At >= from)], targetCelsius, room, now);
    }

    /// <summary>Rest of the curve, then the tail as earlier coolings went; a chamber that cannot follow a fast curve arrives no sooner than it cools by itself.</summary>
    ExpectedMoment? AfterCurve(AnnealingCurve curve, double celsius, Estimate room, IReadOnlyList<double> earlier, Instant now)
    {
        if (curve.EndCelsius > targetCelsius) return OpeningForecast.FromLessons(curve.EndsAt, curve.EndCelsius, targetCelsius, room, earlier, now);
        var due = CrossingOf(curve, now);
        var alone = OpeningForecast.FromLessons(now, celsius, targetCelsius, room, earlier, now);
        return alone is not null && alone.At > due ? alone : new(due, due, alone is null ? due : Instant.Max(due, alone.Latest95));
    }

    /// <summary>When the curve itself comes down to the target.</summary>
    Instant CrossingOf(AnnealingCurve curve, Instant now)
    {
        var (early, late) = (Instant.Max(now, curve.StartsAt), curve.EndsAt);
        while (late - early > Duration.FromSeconds(30))
        {
            var middle = early + (late - early) / 2;
            if (curve.SetpointCelsius(middle) > targetCelsius) early = middle;
            else late = middle;
        }
        return late;
    }

    static ExpectedMoment? Better(ExpectedMoment? a, ExpectedMoment? b) =>
        a is null ? b : b is null ? a : a.Latest95 - a.Earliest95 <= b.Latest95 - b.Earliest95 ? a : b;

    static bool IsFalling(List<Sample> minutes, Instant off)
    {
        var since = minutes.FindIndex(m => m.At >= off);
        return since >= 0 && minutes[since].Value - minutes[^1].Value > 2;
    }

    /// <summary>The last time it came down to the target; null where it was down all the time.</summary>
    Instant? DownSince(List<Sample> minutes)
    {
        var above = minutes.FindLastIndex(m => m.Value > targetCelsius);
        return above < 0 ? null : minutes[above + 1].At;
    }
}

/// <summary>What is known of the room that annealers cool down to.</summary>
static class RoomTemperature
{
    /// <summary>Where no sensor measures it: a hot shop is between 14 and 30 °C at night (common practice).</summary>
    static readonly Estimate unmeasured = Estimate.WithinLimits(22, 8);

    /// <summary>Of a sensor in the room for the air around an annealer, K. Common practice.</summary>
    const double SensorKelvin = 2;

    /// <summary>°C, from a temperature channel of the shop itself where there is one.</summary>
    public static Estimate At(StudioPlan plan, IReadingHistory history, Instant now)
    {
        var channel = plan.Appliances.Where(a => a.Kind == ApplianceKind.Shop).Select(a => a.Channel(Quantity.Temperature)).FirstOrDefault(c => c is not null);
        if (channel is null) return unmeasured;
        var minutes = history.Minutes(channel, now - Duration.FromHours(2), now);
        return minutes.Count == 0 ? unmeasured : new(minutes.Average(m => m.Mean), SensorKelvin);
    }
}
