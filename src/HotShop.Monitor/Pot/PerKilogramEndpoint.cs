using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Http;
using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Pot;

/// <summary>A point of the curve: gross kWh/kg at a throughput, charged on as many days in as many loads.</summary>
public sealed record ThroughputAnswer(double GlassKgPerDay, double KwhPerKg, double KwhPerKgLow95, double KwhPerKgHigh95);

/// <summary>A day between two settled mornings: what it burnt, what holding alone would have, and the glass of its charges.</summary>
public sealed record MeltingDayAnswer(
    Instant From, Instant To, double EnergyKwh, double EnergyKwhLow95, double EnergyKwhHigh95, double HoldingEnergyKwh, double HoldingEnergyKwhLow95, double HoldingEnergyKwhHigh95,
    double GlassKg, double GlassKgLow95, double GlassKgHigh95);

/// <summary>The span's days against the line of the ninety days before; saved above 0 is less burnt than the line gives. Running: actual less expected, summed day by day.</summary>
public sealed record AgainstLineAnswer(
    Instant LineFrom, Instant LineTo, Instant From, Instant To, double ActualKwhPerKg, double ActualKwhPerKgLow95, double ActualKwhPerKgHigh95, double ExpectedKwhPerKg, double ExpectedKwhPerKgLow95, double ExpectedKwhPerKgHigh95,
    double SavedEnergyKwh, double SavedEnergyKwhLow95, double SavedEnergyKwhHigh95, IReadOnlyList<double> RunningEnergyKwh, IReadOnlyList<double> RunningEnergyKwhLow95,
    IReadOnlyList<double> RunningEnergyKwhHigh95);

/// <summary>
/// Energy per kilogram of glass melted, three ways, all gross. Gross: all energy over all glass charged in [from, to); null where nothing was melted. Holding and melting: over
/// the whole days in it; null with the reason where they are not known.
/// </summary>
public sealed record PerKilogramAnswer(
    Instant From, Instant To, double GlassMeltedKg, double GlassMeltedKgLow95, double GlassMeltedKgHigh95, double EnergyKwh, double EnergyKwhLow95, double EnergyKwhHigh95,
    double? GrossKwhPerKg, double? GrossKwhPerKgLow95, double? GrossKwhPerKgHigh95, double MeasuredShare,
    double? HoldingKw, double? HoldingKwLow95, double? HoldingKwHigh95, double? HoldingCelsius, string? HoldingUnknown,
    double? MeltingKwhPerKg, double? MeltingKwhPerKgLow95, double? MeltingKwhPerKgHigh95, string? MeltingUnknown,
    double? NextKwhPerKg, double? NextKwhPerKgLow95, double? NextKwhPerKgHigh95, double? GlassKgPerDay, double? GlassKgPerDayLow95, double? GlassKgPerDayHigh95,
    IReadOnlyList<ThroughputAnswer> AtOtherThroughput, string? ThroughputUnknown,
    IReadOnlyList<MeltingDayAnswer> Days, AgainstLineAnswer? AgainstLine, string? Note)
{
    /// <summary>How much of what was burnt ended in the glass; null where nothing was charged or burnt, or the glass's heat is not known.</summary>
    public EfficiencyAnswer? Efficiency { get; init; }
}

static class PerKilogramEndpoint
{
    /// <summary>As far from the days' own throughput as the curve goes: beyond it the line was never seen.</summary>
    const double LeastOfMean = 0.5, MostOfMean = 1.5;

    const int CurvePoints = 21;

    public static void MapPerKilogram(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/fuel/per-kilogram", (string? appliance, string? from, string? to, StudioPlan plan, PotBook pots, FuelBook fuel, MeltingBook melting, TimeProvider clock) =>
        {
            var one = Ask.Appliance(plan, appliance);
            var now = clock.GetUtcNow().ToInstant();
            var (start, end) = Ask.Span(from, to, now);
            var (use, glass) = (fuel.Between(one, start, end, now), pots.GlassMelted(one.Id, start, end));
            return Answer(use, glass, melting.Of(one, start, end, now), melting.Compare(one, start, end, now), start, end) with { Efficiency = EfficiencyAnswer.Of(pots.Heat(one.Id, start, end), glass, use.Total) };
        }).WithName("fuel-per-kilogram").WithSummary("Energy per kilogram of glass melted: gross, holding power, and melting energy above holding, with 95 % intervals");

    static PerKilogramAnswer Answer(FuelUse use, Estimate glass, MeltingReport? report, MeltingComparison? comparison, Instant from, Instant to)
    {
        Estimate? gross = glass.Value > 0 ? use.Total / glass : null;
        var line = report?.Line;
        return new PerKilogramAnswer(from, to, glass.Value, Math.Max(0, glass.Low95), glass.High95, use.Total.Value, Math.Max(0, use.Total.Low95), use.Total.High95,
            gross?.Value, Low(gross), gross?.High95, use.MeasuredShare,
            report?.Holding?.Value, Low(report?.Holding), report?.Holding?.High95, report?.HeldCelsius, report is null ? NoPot : report.HoldingUnknown,
            line?.Melting.Value, line?.Melting.Low95, line?.Melting.High95, report is null ? NoPot : report.MeltingUnknown,
            line?.NextKilogram?.Value, line?.NextKilogram?.Low95, line?.NextKilogram?.High95, line?.KilogramsPerDay, line?.PerDay.Low95, line?.PerDay.High95, line is null ? [] : Curve(line),
            report is null ? NoPot : report.ThroughputUnknown, line is null ? [] : [.. line.Days.Select(d => Day(d, line))],
            comparison is null ? null : Against(comparison), report?.Note);
    }

    static MeltingDayAnswer Day(MeltingDay day, MeltingLine line)
    {
        var (energy, held, glass) = (Estimate.Relative(day.KilowattHours, line.Doubt.Energy), line.HoldingOf(day), Estimate.Relative(day.ChargedKilograms, line.Doubt.Glass));
        return new(day.From, day.To, energy.Value, energy.Low95, energy.High95, held.Value, held.Low95, held.High95, glass.Value, glass.Low95, glass.High95);
    }

    const string NoPot = "it has no pot: describe it in the configuration to count its glass";

    static double? Low(Estimate? estimate) => estimate is { } e ? Math.Max(0, e.Low95) : null;

    static List<ThroughputAnswer> Curve(MeltingLine line) =>
        [.. Enumerable.Range(0, CurvePoints).Select(i => line.KilogramsPerDay * (LeastOfMean + (MostOfMean - LeastOfMean) * i / (CurvePoints - 1)))
            .Select(kilograms => (Kilograms: kilograms, At: line.At(kilograms))).Where(p => p.At is not null)
            .Select(p => new ThroughputAnswer(p.Kilograms, p.At!.Value.Value, Math.Max(0, p.At.Value.Low95), p.At.Value.High95))];

    static AgainstLineAnswer? Against(MeltingComparison comparison) => comparison is { ExpectedPerKilogram: { } expected, ActualPerKilogram: { } actual }
        ? new(comparison.Baseline.Days[0].From, comparison.Baseline.Days[^1].To, comparison.Days[0].From, comparison.Days[^1].To,
            actual.Value, actual.Low95, actual.High95, expected.Value, Math.Max(0, expected.Low95), expected.High95,
            comparison.SavedKilowattHours.Value, comparison.SavedKilowattHours.Low95, comparison.SavedKilowattHours.High95,
            [.. comparison.RunningKilowattHours.Select(r => r.Value)], [.. comparison.RunningKilowattHours.Select(r => r.Low95)], [.. comparison.RunningKilowattHours.Select(r => r.High95)])
        : null;
}
