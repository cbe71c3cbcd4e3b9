using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Makes °C of a thermocouple's voltage with the temperature of its terminals.</summary>
static class Temperatures
{
    /// <returns>The temperature and its marks; null where the terminals' temperature is not known, so that no number is made up.</returns>
    public static (double Celsius, ReadingMarks Marks)? Of(ChannelPlan channel, double millivolts, double? terminalCelsius)
    {
        if (terminalCelsius is not { } terminal || channel.Thermocouple is not { } type) return null;
        return Thermocouple.OfType(type).Junction(millivolts, terminal) switch
        {
            JunctionResult.Celsius celsius => (celsius.Value, ReadingMarks.None),
            _ => null,
        };
    }
}
