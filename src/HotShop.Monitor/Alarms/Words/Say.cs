using System.Globalization;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.Alarms.Words;

/// <summary>Quantities in words, both for people who think in °C and those who think in °F.</summary>
internal static class Say
{
    public const string SinceStart = "since the service started: ", OpenCircuit = "the circuit of its thermocouple looks open";

    public static string Temperature(double celsius) => Text($"{Rounded(celsius):0} °C ({Rounded(celsius * 1.8 + 32):0} °F)");

    /// <summary>A difference of temperatures: 10 K is 10 °C or 18 °F.</summary>
    public static string Difference(double kelvins) => Text($"{Rounded(kelvins):0} °C ({Rounded(kelvins * 1.8):0} °F)");

    public static string Flow(double cubicMetresPerHour) => Text($"{cubicMetresPerHour:0.0} m³/h, {Rounded(cubicMetresPerHour / EnergyUnits.CubicMetresPerCubicFoot):0} ft³/h");

    public static string Seconds(double seconds) => seconds switch
    {
        < 120 => Text($"{seconds:0} s"),
        < 7200 => Text($"{seconds / 60:0} min"),
        _ => Text($"{seconds / 3600:0} h"),
    };

    public static string Unusable(double value, Quantity quantity) => double.IsNaN(value)
        ? OpenCircuit
        : quantity is Quantity.Temperature or Quantity.Setpoint ? Text($"{Rounded(value):0} °C") : Text($"{value:0.##}");

    /// <summary>Hour and minute on the studio's wall clock.</summary>
    public static string Clock(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("HH:mm", CultureInfo.InvariantCulture);

    // No "-0".
    static double Rounded(double value) => Math.Round(value) + 0.0;

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
