using System.Globalization;

namespace HotShop.Monitor.Configuration;

/// <summary>A number with its unit as people type it in the configuration: <c>1290 °C</c>, <c>2350 °F</c>, <c>15 K</c>, <c>70 ppm</c>.</summary>
public sealed record Limit(double Value, string Unit)
{
    /// <returns>Null where the text is no number followed by a unit.</returns>
    public static Limit? Parse(string text)
    {
        var span = text.AsSpan().Trim();
        var end = 0;
        while (end < span.Length && (char.IsAsciiDigit(span[end]) || span[end] is '.' or '-' or '+')) end++;
        return double.TryParse(span[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            && !span[end..].Trim().IsEmpty
            ? new Limit(value, span[end..].Trim().ToString())
            : null;
    }

    /// <summary>The same temperature in °C; null where the unit is none of °C, °F, K.</summary>
    public double? Celsius => Unit switch
    {
        "°C" or "Cel" or "C" => Value,
        "°F" or "[degF]" or "F" => (Value - 32) / 1.8,
        "K" => Value - 273.15,
        _ => null,
    };

    /// <summary>The same difference of temperatures in kelvin; a difference of 18 °F is 10 K.</summary>
    public double? Kelvins => Unit switch
    {
        "K" or "°C" or "Cel" or "C" => Value,
        "°F" or "[degF]" or "F" => Value / 1.8,
        _ => null,
    };

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.###} {Unit}");
}
