using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using HotShop.Physics.Uncertainty;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Fuel.Flue;

/// <summary>A fire as its flue gas tells it.</summary>
/// <param name="OxygenPercent">As the analyser shows it, % by volume of the dry or wet gas (<paramref name="Sample"/>).</param>
/// <param name="ExcessAirPercent">Air above what burning needs, % of that need.</param>
/// <param name="AvailableHeatPercent">Of the gross heat of the gas: what stays in the chamber.</param>
/// <param name="FlueLossPercent">Of the gross heat: the rest, the heat of the water vapour included.</param>
/// <param name="Gas">Name of the gas it was worked out for.</param>
/// <param name="Words">The same in a sentence.</param>
/// <param name="Problem">Why something is not told; null where nothing is missing.</param>
public sealed record FlueAnswer(
    string Id, string Appliance, Instant? At, string Sample, double? OxygenPercent, double? OxygenPercentLow95, double? OxygenPercentHigh95,
    double? ExcessAirPercent, double? ExcessAirPercentLow95, double? ExcessAirPercentHigh95, double? FlueCelsius, double? FlueCelsiusLow95, double? FlueCelsiusHigh95, double? AirCelsius,
    double? AvailableHeatPercent, double? AvailableHeatPercentLow95, double? AvailableHeatPercentHigh95, double? FlueLossPercent, double? FlueLossPercentLow95, double? FlueLossPercentHigh95,
    string Gas, string Words, string? Problem);

/// <summary>All fires that have an analyser, and what a reading is no licence for.</summary>
public sealed record FlueAnswers(IReadOnlyList<FlueAnswer> Appliances, string Caution);

static class FlueEndpoints
{
    internal const string Caution =
        "An analyser reading is no permission to adjust a burner: licensed people do that, with an instrument of their own and under local codes. Where a fire may be short of air it makes carbon monoxide: if its alarm sounds or somebody feels unwell, everybody goes outside and calls for help from there.";

    public static void MapFlue(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/combustion", (string? appliance, StudioPlan plan, FlueBook flues, FuelBook fuel, TimeProvider clock) =>
        {
            var asked = appliance is null ? null : Ask.Appliance(plan, appliance);
            if (asked is not null && !FlueBook.Has(asked))
                throw new BadHttpRequestException($"'{appliance}' has no analyser: a furnace or glory hole needs a channel with the quantity oxygen", StatusCodes.Status404NotFound);
            var now = clock.GetUtcNow().ToInstant();
            return new FlueAnswers([.. flues.Appliances.Where(a => asked is null || a.Id == asked.Id).Select(a => Answer(plan.Site, a, flues.At(a, now), fuel.Gas.Fuel.Name))], Caution);
        }).WithName("combustion").WithSummary("Excess air of gas fires from the oxygen in their flues, and with the flue's temperature the heat that stays in the chamber, each with its 95 % interval");

    internal static FlueAnswer Answer(string site, AppliancePlan appliance, FlueReport report, string gas)
    {
        var (oxygen, air, flue, heat) = (report.OxygenPercent, report.ExcessAir?.Times(100), report.FlueCelsius, report.AvailableHeat?.Times(100));
        return new FlueAnswer(
            $"{site}/{appliance.Id}", appliance.Id, report.At, appliance.Options.Flue?.Sample ?? "dry", oxygen?.Value, Floor(oxygen?.Low95), oxygen?.High95,
            air?.Value, Floor(air?.Low95), air?.High95, flue?.Value, flue?.Low95, flue?.High95, report.AirCelsius,
            heat?.Value, heat?.Low95, heat?.High95, 100 - heat?.Value, 100 - heat?.High95, 100 - heat?.Low95, gas, Words(report, air, heat), report.Problem);
    }

    /// <summary>There is no less than nothing of oxygen or of air.</summary>
    static double? Floor(double? percent) => percent is { } known ? Math.Max(0, known) : null;

    static string Words(FlueReport report, Budget? air, Budget? heat)
    {
        if (air is null) return $"Nothing is told of the fire: {report.Problem}.";
        var words = report.MayLackAir
            ? Text($"The excess of air is at most {air.High95:0} %, and the fire may be short of air.")
            : Text($"Excess air {air.Value:0} % ({Math.Max(0, air.Low95):0} to {air.High95:0}).");
        if (heat is not null) words += Text($" Of the gas's gross heat {heat.Value:0} % stays in the chamber ({heat.Low95:0} to {heat.High95:0}).");
        return report.Problem is { } problem ? $"{words} More is not told: {problem}." : words;
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
