using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>Terminals in a warm room: volts add, degrees do not. And what a microvolt is worth.</summary>
static class CompensationChecks
{
    const string Worked = Couples.Monograph + ", functions summed at the terminals and solved in a separate program";
    const string Derived = Couples.Monograph + ", derivative of the reference function in a separate program";

    public static IEnumerable<Check> All =>
    [
        Warm(Couples.K, 45, 23.4, "1121.65"), Warm(Couples.N, 40, 25, "1115.08"), Warm(Couples.S, 11.3, 28, "1159.16"), Warm(Couples.R, 12, 28, "1122.60"), Warm(Couples.B, 6.2, 30, "1142.26"),
        Slope(Couples.K, 1150, "37.2"), Slope(Couples.N, 1150, "37.6"), Slope(Couples.R, 1150, "13.8"), Slope(Couples.S, 1150, "11.9"), Slope(Couples.B, 1150, "10.1"),
        Slope(Couples.K, 25, "40.5"), Slope(Couples.S, 25, "6.0"),
    ];

    static Check Warm(Thermocouple couple, double millivolts, double terminalCelsius, string celsius) =>
        Check.Printed(FormattableString.Invariant($"type {couple.Type} with {millivolts:0.000} mV at terminals of {terminalCelsius:0.0} °C"), celsius, "°C", Worked,
            () => couple.JunctionCelsius(millivolts, terminalCelsius) ?? double.NaN, Standing.Computed);

    static Check Slope(Thermocouple couple, double celsius, string microvolts) =>
        Check.Printed($"sensitivity of type {couple.Type} at {celsius:0} °C", microvolts, "µV/°C", Derived, () => 1000 * couple.MillivoltsPerDegree(celsius) ?? double.NaN, Standing.Computed);
}
