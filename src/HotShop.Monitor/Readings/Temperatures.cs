using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;

namespace HotShop.Monitor.Readings;

/// <summary>Makes °C of a thermocouple's voltage with the temperature of its terminals.</summary>
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
}
