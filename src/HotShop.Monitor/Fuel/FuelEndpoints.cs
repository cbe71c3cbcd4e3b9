using System.Security.Claims;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Fuel;

/// <summary>Energy of one step. <c>energyKwh</c> is measured, <c>estimatedEnergyKwh</c> is from nameplates and on-time; the cost covers both.</summary>
public sealed record FuelAnswer(
    Instant From, Instant To, double EnergyKwh, double EstimatedEnergyKwh, double VolumeM3, decimal? CostAmount, string Currency,
    double Co2Kg, double MeasuredShare, int MeterResets);

static class FuelEndpoints
{
    public static void MapFuel(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/fuel", (string? appliance, string? from, string? to, string? step, StudioPlan plan, FuelBook fuel, TimeProvider clock, ClaimsPrincipal visitor) =>
        {
            var one = Ask.Appliance(plan, appliance);
            var now = clock.GetUtcNow().ToInstant();
            var (start, end) = Ask.Span(from, to, now);
            var chosen = step switch
            {
                null or "hour" => FuelStep.Hour,
                "day" => FuelStep.Day,
                "month" => FuelStep.Month,
                _ => throw new BadHttpRequestException($"'step' is '{step}': write hour, day or month"),
            };
            return fuel.Use(one, start, end, chosen, now).Select(u => Answer(u, plan.Configuration.Currency, visitor));
        }).WithName("fuel").WithSummary("Energy, gas, cost (for the owner) and carbon dioxide by hour, day or month of the studio's zone");

    /// <summary>A paired screen hangs on the wall for everybody: it gets the energy, the owner the money too.</summary>
    internal static FuelAnswer Answer(FuelUse use, string currency, ClaimsPrincipal visitor) => new(
        use.From, use.To, use.EnergyKilowattHours, use.EstimatedKilowattHours, use.BaseCubicMetres, visitor.IsInRole("Owner") ? use.Cost : null, currency,
        use.CarbonDioxideKilograms, use.MeasuredShare, use.Resets);
}
