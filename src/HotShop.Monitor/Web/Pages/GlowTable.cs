using System.Globalization;
using System.Text;
using HotShop.Physics.Radiation;

namespace HotShop.Monitor.Web.Pages;

/// <summary>
/// The colours in which hot bodies are drawn, one for every 10 °C from 0 to 1400 °C, as text for a page to read.
/// The browser only looks colours up; the physics stays in one place.
/// </summary>
internal sealed class GlowTable
{
    internal const int StepCelsius = 10;
    internal const int HighestCelsius = 1400;

    public string Json { get; } = Write();

    /// <summary>Colour of a body at this temperature, clamped to 0..1400 °C, as <c>#rrggbb</c>.</summary>
    public static string Hex(double temperatureCelsius) => Glow.Srgb(Math.Clamp(temperatureCelsius, 0, HighestCelsius)).Hex;

    static string Write()
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{{\"stepCelsius\":{StepCelsius},\"colours\":[");
        for (var celsius = 0; celsius <= HighestCelsius; celsius += StepCelsius)
            text.Append(celsius == 0 ? "\"" : ",\"").Append(Hex(celsius)).Append('"');
        return text.Append("]}").ToString();
    }
}
