using HotShop.Physics.Annealing;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>When a chamber that cools by itself is down to a temperature. Pure.</summary>
static class OpeningForecast
{
    /// <summary>Standard uncertainty of calling a wall of layers one exponential, as a share of the time to go. A choice; the scorecard "annealing" shows that it holds.</summary>
    const double ModelShare = 0.05;

    /// <summary>Of a chamber's couple, K: limits ±2.5 °C below 333 °C, class 2 of IEC 60584-1:2013, type K.</summary>
    static readonly double coupleKelvin = Estimate.WithinLimits(0, 2.5).StandardUncertainty;

    /// <summary>How much the room differs from one cooling to the next, K, once earlier ones have taught how the chamber cools in it. A choice.</summary>
    const double RoomChangeKelvin = 2;

    /// <summary>With one or two earlier coolings their spread is not known: a fifth. A choice.</summary>
    const double SpreadUntilThree = 0.2;

    /// <summary>From the measured tail itself.</summary>
    /// <param name="samples">°C since the heat went off, in order of time.</param>
    /// <returns>Null where the samples show no tail, or the room may be as warm as the target.</returns>
    public static ExpectedMoment? FromTail(IReadOnlyList<Sample> samples, double targetCelsius, Estimate roomCelsius, Instant now)
    {
        if (CoolingTail.Fit(samples, roomCelsius) is not { } tail || tail.HoursTo(targetCelsius) is not { } hours) return null;
        var at = tail.From + Duration.FromHours(hours.Value);
        var model = ModelShare * Math.Max(0, (at - now).TotalHours);
        return Moment(at, double.Hypot(double.Hypot(hours.StandardUncertainty, model), CoupleHours(targetCelsius, roomCelsius.Value, tail.TimeConstantHours.Value)), now);
    }

    /// <summary>From a temperature at a moment, as earlier coolings went.</summary>
    /// <param name="constantsHours">Time constants of earlier coolings, h; at least one.</param>
    /// <returns>Null where nothing was learnt, or the room may be as warm as the target.</returns>
    public static ExpectedMoment? FromLessons(Instant from, double fromCelsius, double targetCelsius, Estimate roomCelsius, IReadOnlyList<double> constantsHours, Instant now)
    {
        if (constantsHours.Count == 0) return null;
        var constant = constantsHours.Average();
        double? Hours(double room) => CoolingTail.Hours(fromCelsius, targetCelsius, room, constant);
        if (Hours(roomCelsius.Value) is not { } hours) return null;
        var change = Math.Min(RoomChangeKelvin, (targetCelsius - roomCelsius.Value) / 2);
        var byRoom = (Hours(roomCelsius.Value + change)!.Value - Hours(roomCelsius.Value - change)!.Value) / 2;
        var doubt = double.Hypot(hours * RelativeSpread(constantsHours, constant), byRoom);
        return Moment(from + Duration.FromHours(hours), double.Hypot(doubt, CoupleHours(targetCelsius, roomCelsius.Value, constant)), now);
    }

    /// <summary>Spread of one more draw, as a standard deviation that a normal 95 % interval may be made of.</summary>
    static double RelativeSpread(IReadOnlyList<double> constants, double mean)
    {
        return constants.Count < 3 ? SpreadUntilThree : FurtherDraws.Sum(constants, 1).StandardUncertainty / mean;
    }

    /// <summary>An error of the couple in hours: how long the chamber takes for as many K at the target.</summary>
    static double CoupleHours(double targetCelsius, double roomCelsius, double constantHours) => coupleKelvin * constantHours / Math.Max(1, targetCelsius - roomCelsius);

    static ExpectedMoment Moment(Instant at, double standardHours, Instant now)
    {
        var half = Duration.FromHours(Math.Min(Quantiles.Normal95 * standardHours, 24 * 14));
        return new(Instant.Max(at, now), Instant.Max(at - half, now), Instant.Max(at + half, now));
    }
}
