using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Thermometry;

namespace HotShop.Evaluation.Numbers;

/// <summary>What couples give, and what an instrument set to the wrong one makes of it.</summary>
static class CouplePictures
{
    const double Terminals = 25;

    public static Drawing Voltages()
    {
        var chart = new Chart("Voltage of the eight couples, reference junction at 0 °C", new("°C", -200, 1800, 200), new("mV", -10, 80, 10));
        foreach (var type in Enum.GetValues<ThermocoupleType>())
        {
            var couple = Thermocouple.OfType(type);
            var curve = Curve.Of(-200, 1820, 5, couple.Millivolts);
            chart.Curve(curve);
            var (endX, endY) = curve[^1];
            var (right, up) = type switch { ThermocoupleType.R => (0.2, 0.3), ThermocoupleType.S => (0.2, -0.4), ThermocoupleType.B => (-0.6, -1.1), ThermocoupleType.T => (-0.8, 0.35), _ => (0.2, 0.1) };
            chart.Words(Math.Min(endX, 1790), endY, type.ToString(), right: right, up: up, bold: true);
        }
        return chart.Drawing;
    }

    public static Drawing WrongType()
    {
        var chart = new Chart("How wrong the reading is when the wrong type is set (terminals at 25 °C)", new("true °C", 0, 1300, 100), new("°C shown above the true ones", -1000, 600, 200));
        Pair("S set to B", ThermocoupleType.S, ThermocoupleType.B, 800, above: true);
        Pair("K set to N", ThermocoupleType.K, ThermocoupleType.N, 800, above: true);
        Pair("R set to S", ThermocoupleType.R, ThermocoupleType.S, 1250, above: true);
        Pair("S set to R", ThermocoupleType.S, ThermocoupleType.R, 1250, above: true);
        Pair("N set to K", ThermocoupleType.N, ThermocoupleType.K, 600, above: false);
        Pair("B set to S", ThermocoupleType.B, ThermocoupleType.S, 1000, above: true);
        Pair("S set to K", ThermocoupleType.S, ThermocoupleType.K, 900, above: false);
        return chart.Drawing;

        void Pair(string name, ThermocoupleType wired, ThermocoupleType set, double labelAt, bool above)
        {
            var curve = Curve.Of(30, 1300, 5, t => WiringFault.WrongType(Thermocouple.OfType(wired), Thermocouple.OfType(set), t, Terminals) - t);
            var at = curve.Last(p => p.X <= labelAt);
            chart.Curve(curve).Words(at.X, at.Y, name, Anchor.Middle, right: 0, up: above ? 0.5 : -1.3, bold: true);
        }
    }
}
