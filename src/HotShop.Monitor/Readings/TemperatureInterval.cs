using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>What corrects and bounds a channel's newest temperature.</summary>
/// <param name="AsReadCelsius">Before the correction; null where no calibration is in force.</param>
/// <param name="Correction">Added to it; null where no calibration is in force.</param>
/// <param name="Budget">Why it may be off, with its 95 % interval; null where too little is known of the sensor.</param>
public sealed record TemperatureInterval(double? AsReadCelsius, DatedCalibration? Calibration, Correction? Correction, Budget? Budget)
{
    /// <summary>Terminals that nobody measures are in a room; how warm it is changes little. Common practice.</summary>
    const double RoomCelsius = 25;

    static readonly TemperatureUncertainty nothingSaid = new();

    /// <returns>Null where the channel measures no temperature or has none yet.</returns>
    public static TemperatureInterval? Of(ChannelPlan channel, StudioPlan plan, LatestReadings latest)
    {
        if (channel.Quantity != Quantity.Temperature || latest.Of(channel) is not { } reading) return null;
        var asRead = latest.AsReadOf(channel);
        var calibration = asRead is null ? null : channel.Calibrations.At(reading.At);
        var correction = calibration?.Curve.At(asRead!.Value);
        // Beyond the readings that were calibrated nobody knows how good the correction is: there the sensor is as it was delivered.
        var calibrated = correction is { IsHeld: false } || calibration?.Curve.Points.Count == 1 ? calibration?.StandardUncertaintyCelsius : null;
        var terminals = channel.ColdJunction is { } id && plan.Channels.Find(id) is { } junction ? latest.Of(junction)?.Value : null;
        return new(asRead, calibration, correction, (channel.Accuracy ?? nothingSaid).At(reading.Value, terminals ?? RoomCelsius, calibrated));
    }
}
