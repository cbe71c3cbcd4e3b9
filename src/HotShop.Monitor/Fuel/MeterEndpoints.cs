using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime.Extensions;

namespace HotShop.Monitor.Fuel;

/// <summary>Which factor turns a metered cubic metre into one at base conditions, and why.</summary>
/// <param name="Factor">Its interval is that of temperature and pressure in the line, whoever worked it out.</param>
public sealed record MeterFactorAnswer(
    double Factor, double FactorLow95, double FactorHigh95, string Source, double WorkedOut, double WorkedOutLow95, double WorkedOutHigh95,
    double GrossKwhPerM3, double GrossKwhPerM3Low95, double GrossKwhPerM3High95, double KwhPerMeteredM3, double KwhPerMeteredM3Low95, double KwhPerMeteredM3High95, string Words);

/// <summary>Flow and power of whatever burns, from the turns of a dial.</summary>
/// <param name="MeterFactor">What a burner's own sensor must be multiplied with, where its flow was given; else null.</param>
public sealed record DialAnswer(
    int Turns, double SecondsPerTurn, double SecondsPerTurnLow95, double SecondsPerTurnHigh95, double FlowM3PerHour, double FlowM3PerHourLow95, double FlowM3PerHourHigh95, double PowerKw, double PowerKwLow95, double PowerKwHigh95,
    double? MeterFactor, double? MeterFactorLow95, double? MeterFactorHigh95, string Words);

static class MeterEndpoints
{
    public static void MapMeters(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/meters", (StudioPlan plan, FuelBook fuel, MeterAnswers meters, TimeProvider clock) =>
            new { meters = meters.All(clock.GetUtcNow().ToInstant()), gas = Factor(plan.Configuration.Gas, fuel.Gas) })
            .WithName("meters").WithSummary("The meters, each at its place: what passed, what was read, and whether it agrees with those behind it; and the factor applied to gas");

        app.MapGet("/api/meters/dial", (string? dial, string? unit, string? presses, string? shown, FuelBook fuel, StudioFuel studio) =>
            Clock(Volume(dial, unit), Presses(presses), shown is null ? null : Number(shown, "shown"), fuel.Gas, FuelDoubt.OfMain(studio.Meters, EnergyKind.Gas)))
            .WithName("dial").WithSummary("Clocks a meter's dial: 'dial' and 'unit' are the volume of a turn, 'presses' the seconds of each press with commas; stores nothing");
    }

    static double Volume(string? dial, string? unit)
    {
        var size = Number(dial ?? throw new BadHttpRequestException("'dial' is missing: write the volume of one turn, e.g. dial=0.5&unit=[cft_i]"), "dial");
        return Ucum.InCanonical(size, unit ?? "m3", Dimension.Volume) is { } volume and > 0 and < 100 ? volume
            : throw new BadHttpRequestException($"'{dial} {unit}' is no volume of a dial: write {Ucum.Offer(Dimension.Volume)} and a size such as 0.5 or 0.01");
    }

    static double Number(string text, string name) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) && number > 0 ? number
            : throw new BadHttpRequestException($"'{name}' is '{text}': write a number above 0, with a point");

    static double[] Presses(string? text)
    {
        var parts = (text ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (parts.Length is < 2 or > 500) throw new BadHttpRequestException("'presses' needs 2 to 500 times in seconds, one for each passing of the hand: presses=0,22.1,44.0");
        var seconds = parts.Select(p => double.TryParse(p, NumberStyles.Float, CultureInfo.InvariantCulture, out var s) && double.IsFinite(s) ? s
            : throw new BadHttpRequestException($"'presses' has '{p}': write seconds with a point and commas between")).ToArray();
        for (var i = 1; i < seconds.Length; i++)
            if (seconds[i] <= seconds[i - 1]) throw new BadHttpRequestException($"press {i + 1} of 'presses' is not later than the one before it");
        return seconds;
    }

    internal static DialAnswer Clock(double dialCubicMetres, double[] presses, double? shownCubicMetresPerHour, StudioGas gas, double meterRelative)
    {
        var reading = DialClock.Read(dialCubicMetres, presses);
        var flow = reading.CubicMetresPerHour * Estimate.Relative(1, meterRelative);
        var power = flow * Estimate.Relative(gas.Fuel.GrossKilowattHours(gas.ToBase(1)), gas.EnergyRelative);
        var factor = shownCubicMetresPerHour is { } shown ? (flow / Estimate.Exact(shown)) : (Estimate?)null;
        var timing = reading.SecondsPerTurn.RelativeUncertainty * Quantiles.Normal95;
        var words = string.Create(CultureInfo.InvariantCulture, $"{reading.Turns} {(reading.Turns == 1 ? "turn" : "turns")} of {reading.SecondsPerTurn.Value:0.0} s: timed to ±{timing * 100:0.0} %. ")
            + (timing > 0.02 ? string.Create(CultureInfo.InvariantCulture, $"Go on for {Math.Ceiling(DialClock.PressSeconds * Math.Sqrt(2) * Quantiles.Normal95 / 0.01):0} s in all to be within ±1 %.") : string.Create(CultureInfo.InvariantCulture, $"Longer would hardly help: the meter itself may be {meterRelative * Quantiles.Normal95 * 100:0.0} % off."));
        return new DialAnswer(reading.Turns, reading.SecondsPerTurn.Value, reading.SecondsPerTurn.Low95, reading.SecondsPerTurn.High95, flow.Value, flow.Low95, flow.High95, power.Value, power.Low95, power.High95,
            factor?.Value, factor?.Low95, factor?.High95, words);
    }

    internal static MeterFactorAnswer Factor(GasOptions options, StudioGas gas)
    {
        var why = gas.BillFactor is { } bill
            ? string.Create(CultureInfo.InvariantCulture, $"A metered cubic metre counts as {bill:0.####} at {gas.Base.Name}: the factor of your bill. From pressure, temperature and altitude it would be {gas.WorkedOutFactor:0.####}.")
            : string.Create(CultureInfo.InvariantCulture, $"A metered cubic metre counts as {gas.WorkedOutFactor:0.####} at {gas.Base.Name}: {options.LineGaugeMillibar:0.#} mbar above the air, ")
                + (options.LineCelsius is { } celsius ? string.Create(CultureInfo.InvariantCulture, $"gas at {celsius:0.#} °C, ") : "a meter that compensates temperature itself, ")
                + string.Create(CultureInfo.InvariantCulture, $"{options.AltitudeMetres:0} m above the sea. If your bill states another factor, write it as gas.billFactor.");
        var (factor, workedOut) = (Estimate.Relative(gas.BaseFactor, gas.VolumeRelative), Estimate.Relative(gas.WorkedOutFactor, gas.VolumeRelative));
        var (value, metered) = (Estimate.Relative(gas.Fuel.GrossKilowattHoursPerCubicMetre, gas.HeatingValueRelative), Estimate.Relative(gas.Fuel.GrossKilowattHours(gas.ToBase(1)), gas.EnergyRelative));
        return new MeterFactorAnswer(
            factor.Value, factor.Low95, factor.High95, gas.BillFactor is null ? "worked-out" : "bill", workedOut.Value, workedOut.Low95, workedOut.High95,
            value.Value, value.Low95, value.High95, metered.Value, metered.Low95, metered.High95, why);
    }
}
