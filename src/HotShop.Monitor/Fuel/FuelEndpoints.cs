using System.Security.Claims;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using HotShop.Physics.Statistics;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Fuel;

/// <summary>Energy of one step. <c>energyKwh</c> is what meters and sensors counted, readings that people type included; <c>estimatedEnergyKwh</c> is from nameplates,
/// modes and on-time; the cost covers both. Prices and the factor of the carbon dioxide are taken as certain, the energy is not.</summary>
public sealed record FuelAnswer(
    Instant From, Instant To, double EnergyKwh, double EnergyKwhLow95, double EnergyKwhHigh95, double EstimatedEnergyKwh, double EstimatedEnergyKwhLow95, double EstimatedEnergyKwhHigh95,
    double VolumeM3, double VolumeM3Low95, double VolumeM3High95, decimal? CostAmount, decimal? CostAmountLow95, decimal? CostAmountHigh95, string Currency,
    double Co2Kg, double Co2KgLow95, double Co2KgHigh95, double MeasuredShare, int MeterResets)
{
    /// <summary>How it is known: <c>measured</c>, <c>derived</c> (left over of a main meter, or between typed readings) or <c>estimated</c>; null for the whole studio.</summary>
    public string? Origin { get; init; }

    /// <summary>Both energies together with their 95 % interval, kWh.</summary>
    public double TotalKwh { get; init; }
    public double TotalKwhLow95 { get; init; }
    public double TotalKwhHigh95 { get; init; }

    /// <summary>Parts of the whole studio that add up to the total; empty for one appliance.</summary>
    public IReadOnlyList<FuelPartAnswer> Parts { get; init; } = [];

    /// <param name="cost">Rounded; null where a price is missing, or it is not the caller's to see.</param>
    internal static FuelAnswer Of(
        Instant from, Instant to, Estimate metered, Estimate estimated, Estimate volume, decimal? cost, double costUncertainty, string currency, Estimate carbonDioxide, Estimate total,
        double measuredShare, int resets)
    {
        var half = Math.Round((decimal)(costUncertainty * Quantiles.Normal95), 2, MidpointRounding.AwayFromZero);
        return new FuelAnswer(
            from, to, metered.Value, Low(metered), metered.High95, estimated.Value, Low(estimated), estimated.High95, volume.Value, Low(volume), volume.High95,
            cost, cost is { } paid ? Math.Min(paid, Math.Max(0, paid - half)) : null, cost + half, currency, carbonDioxide.Value, Low(carbonDioxide), carbonDioxide.High95, measuredShare, resets)
        {
            TotalKwh = total.Value, TotalKwhLow95 = Low(total), TotalKwhHigh95 = total.High95,
        };
    }

    /// <summary>Nothing burns less than nothing.</summary>
    static double Low(Estimate estimate) => Math.Min(estimate.Value, Math.Max(0, estimate.Low95));
}

/// <summary>What one appliance used of one kind of energy.</summary>
public sealed record FuelPartAnswer(
    string Appliance, string Energy, string Origin, double Kwh, double KwhLow95, double KwhHigh95, double VolumeM3, double VolumeM3Low95, double VolumeM3High95);

static class FuelEndpoints
{
    public static void MapFuel(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/fuel", (string? appliance, string? from, string? to, string? step, StudioPlan plan, FuelBook fuel, StudioFuel studio, TimeProvider clock, ClaimsPrincipal visitor) =>
        {
            var one = appliance is null ? null : Ask.Appliance(plan, appliance);
            var now = clock.GetUtcNow().ToInstant();
            var (start, end) = Ask.Span(from, to, now);
            var chosen = step switch
            {
                null or "hour" => FuelStep.Hour,
                "day" => FuelStep.Day,
                "month" => FuelStep.Month,
                _ => throw new BadHttpRequestException($"'step' is '{step}': write hour, day or month"),
            };
            var isOwner = visitor.IsInRole("Owner");
            return one is null or { Kind: ApplianceKind.Shop } ? new StudioAnswers(plan, fuel, studio, now, isOwner).Of(start, end, chosen)
                : studio.HasOwnSource(one) ? fuel.Use(one, start, end, chosen, now).Select(u => Answer(u, plan.Configuration.Currency, visitor))
                : new StudioAnswers(plan, fuel, studio, now, isOwner).Of(one, start, end, chosen);
        }).WithName("fuel").WithSummary("Energy, gas, cost (for the owner) and carbon dioxide by hour, day or month of the studio's zone; of the whole studio where no appliance is named");

    /// <summary>A paired screen hangs on the wall for everybody: it gets the energy, the owner the money too.</summary>
    internal static FuelAnswer Answer(FuelUse use, string currency, ClaimsPrincipal visitor) => FuelAnswer.Of(
        use.From, use.To, use.Measured, use.Estimated, new(use.BaseCubicMetres, use.Doubt.BaseCubicMetres), visitor.IsInRole("Owner") ? use.Cost : null, use.Doubt.Cost, currency,
        new(use.CarbonDioxideKilograms, use.Doubt.CarbonDioxideKilograms), use.Total, use.MeasuredShare, use.Resets) with
    {
        Origin = use.EnergyKilowattHours > 0 || use.EstimatedKilowattHours == 0 ? "measured" : "estimated",
    };
}
