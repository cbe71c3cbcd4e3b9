using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Readings;

/// <summary>A point of a channel's course: a raw value, or a step's mean with its extremes.</summary>
public sealed record PointAnswer(Instant Time, double? Value, double? Mean, double? Min, double? Max, int? Count);

/// <param name="Complete">False where there are more raw values than fit: the points are then the newest; ask for a shorter span, or a longer step.</param>
public sealed record ReadingsAnswer(string Channel, string Quantity, string Unit, string Step, bool Complete, IReadOnlyList<PointAnswer> Points);

static class ReadingEndpoints
{
    const int MostRaw = 20_000;

    public static void MapReadings(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/readings", (string? channel, string? from, string? to, string? step, StudioPlan plan, IReadingHistory history, TimeProvider clock) =>
        {
            var one = Ask.Channel(plan, channel);
            var (start, end) = Ask.Span(from, to, clock.GetUtcNow().ToInstant());
            var chosen = step ?? Fitting(end - start);
            IReadOnlyList<PointAnswer> points = chosen switch
            {
                "raw" => [.. history.Raw(one, start, end, MostRaw).Select(s => new PointAnswer(s.At, s.Value, null, null, null, null))],
                "minute" => [.. history.Minutes(one, start, end).Select(m => new PointAnswer(m.Minute, null, m.Mean, m.Min, m.Max, m.Count))],
                "hour" => [.. history.Hours(one, start, end).Select(h => new PointAnswer(h.Hour, null, h.Mean, h.Min, h.Max, h.Count))],
                _ when int.TryParse(chosen, out var seconds) && seconds is >= 1 and <= 86_400 => Thinned(one, start, end, Duration.FromSeconds(seconds), history),
                _ => throw new BadHttpRequestException($"'step' is '{chosen}': write raw, minute, hour or a number of seconds up to 86400"),
            };
            return new ReadingsAnswer($"{plan.Site}/{one.Id}", Wire.Quantities.NameOf(one.Quantity), Wire.Quantities.CanonicalUnit(one.Quantity), chosen, chosen != "raw" || points.Count < MostRaw, points);
        }).WithName("readings").WithSummary("A channel's values over time: raw, or by minute or hour");

    /// <summary>
    /// Steps of any length: from raw readings while short, else from minute rows. A step's mean is that of its samples;
    /// its extremes are true. A step without samples is left out, so that a gap stays a gap.
    /// </summary>
    static IReadOnlyList<PointAnswer> Thinned(Wire.ChannelPlan channel, Instant from, Instant to, Duration step, IReadingHistory history)
    {
        // The minute that runs has no row yet: its samples come from the raw rows.
        var minutes = step < Duration.FromMinutes(1) ? [] : history.Minutes(channel, from, to);
        var rest = minutes.Count > 0 ? minutes[^1].Minute + Duration.FromMinutes(1) : from;
        var raw = step < Duration.FromMinutes(1) || to - rest < Duration.FromHours(2) ? history.Raw(channel, rest, to, MostRaw) : [];
        return [.. minutes.Select(m => (m.Minute, m.Mean, m.Min, m.Max, m.Count))
            .Concat(raw.Select(s => (s.At, s.Value, s.Value, s.Value, 1)))
            .GroupBy(p => (p.Item1 - from).BclCompatibleTicks / step.BclCompatibleTicks)
            .Select(g => new PointAnswer(from + step * g.Key, null, g.Sum(p => p.Item2 * p.Item5) / g.Sum(p => p.Item5), g.Min(p => p.Item3), g.Max(p => p.Item4), g.Sum(p => p.Item5)))];
    }

    /// <summary>A step that keeps a picture below some thousands of points.</summary>
    static string Fitting(Duration span) => span <= Duration.FromHours(3) ? "raw" : span <= Duration.FromDays(7) ? "minute" : "hour";
}
