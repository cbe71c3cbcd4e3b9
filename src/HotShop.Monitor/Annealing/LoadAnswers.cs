using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Glass;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <param name="Time">Corners of the curve.</param>
sealed record CurvePoint(Instant Time, double Celsius);

sealed record MeasuredPoint(Instant Time, double MeanCelsius, double MinCelsius, double MaxCelsius);

/// <param name="DueCelsius">What the curve asks for now; null before and after.</param>
/// <param name="MeasuredCelsius">The newest reading; null where none is fresh.</param>
/// <param name="DeviationKelvin">Measured minus due.</param>
/// <param name="DoneAt">When the curve ends. Whether the piece may come out is for a person to judge.</param>
/// <param name="ClosedAt">When the load ended, or was followed by the next; null while it is to come or under way.</param>
/// <param name="Glass">The curve against the annealing and strain point of each glass in a pot.</param>
/// <param name="Measured">Only where one load is asked for: minutes of a load up to two days, else hours.</param>
sealed record LoadAnswer(
    string Id, string Appliance, string Name, Instant StartAt, double StartCelsius, IReadOnlyList<StageText> Stages, IReadOnlyList<CurvePoint> Curve,
    Instant DoneAt, Instant? ClosedAt, int? Stage, double? DueCelsius, double? MeasuredCelsius, double? DeviationKelvin, IReadOnlyList<LoadGlassAnswer> Glass, IReadOnlyList<MeasuredPoint>? Measured);

/// <summary>A load as callers see it: intended, measured, and how far apart they are now.</summary>
sealed class LoadAnswers(StudioPlan plan, LoadBook loads, LatestReadings latest, IReadingHistory history)
{
    static readonly Duration LongestInMinutes = Duration.FromDays(2);

    readonly IReadOnlyList<GlassProfile> glasses = [.. plan.Appliances.Select(PotPlan.Of).OfType<PotPlan>().Select(p => p.Profile).DistinctBy(g => g.Name)];

    public LoadAnswer Of(AnnealerLoad load, Instant now, bool withMeasured)
    {
        var (curve, closesAt) = (load.Curve, loads.ClosesAt(load));
        var channel = plan.Appliance(load.Appliance)?.Channel(Quantity.Temperature);
        var isUnderWay = now >= curve.StartsAt && now <= closesAt;
        var due = isUnderWay ? curve.SetpointCelsius(now) : null;
        var measured = isUnderWay && channel is not null && latest.QualityOf(channel, now) == Quality.Good ? latest.Of(channel)?.Value : null;
        return new LoadAnswer(load.Id, $"{plan.Site}/{load.Appliance}", load.Name, curve.StartsAt, curve.StartCelsius, load.Stages,
            [.. curve.Corners.Select(c => new CurvePoint(c.At, c.Celsius))],
            curve.EndsAt, now > closesAt ? closesAt : null, isUnderWay ? curve.StageAt(now) : null, due, measured, measured - due,
            [.. glasses.Select(g => LoadGlassAnswer.Of(curve, g))],
            withMeasured ? Measured(channel, curve.StartsAt, Instant.Min(now, closesAt)) : null);
    }

    IReadOnlyList<MeasuredPoint> Measured(ChannelPlan? channel, Instant from, Instant to)
    {
        if (channel is null || from >= to) return [];
        return to - from <= LongestInMinutes
            ? [.. history.Minutes(channel, from, to).Select(m => new MeasuredPoint(m.Minute, m.Mean, m.Min, m.Max))]
            : [.. history.Hours(channel, from, to).Where(h => h.Mean is not null).Select(h => new MeasuredPoint(h.Hour, h.Mean!.Value, h.Min!.Value, h.Max!.Value))];
    }
}
