using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>
/// The one place where what a sensor sent becomes the °C that alarms, pages, annealing and history go by: a thermocouple's voltage with the temperature of its
/// terminals, then the correction of the calibration that was in force when it was read.
/// </summary>
static class Temperatures
{
    /// <returns>
    /// The temperature in °C, or null with the reason why there is none: no number is made up for a broken wire
    /// or for terminals nobody measures.
    /// </returns>
    public static (double? Celsius, ReadingMarks Marks) Of(ChannelPlan channel, double millivolts, double? terminalCelsius)
    {
        if (terminalCelsius is not { } terminal || channel.Thermocouple is not { } type) return (null, ReadingMarks.NoTerminals);
        return Thermocouple.OfType(type).Junction(millivolts, terminal) switch
        {
            JunctionResult.Celsius celsius => (celsius.Value, ReadingMarks.None),
            _ => (null, ReadingMarks.OpenCircuit),
        };
    }

    /// <summary>A temperature with its correction.</summary>
    /// <returns>Null where no calibration was in force: the temperature stands as it was read, and is not kept twice.</returns>
    public static double? Corrected(ChannelPlan channel, double asReadCelsius, Instant at) =>
        channel.Calibrations.At(at) is { } calibration ? asReadCelsius + calibration.Curve.At(asReadCelsius).Celsius : null;
}
