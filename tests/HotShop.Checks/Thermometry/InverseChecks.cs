using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>Voltages turned into degrees: a hundredth of the table's last digit wide, so that each coefficient of the functions shows.</summary>
static class InverseChecks
{
    const string Solved = Couples.Monograph + ", reference function, solved by bisection in a separate program";

    public static IEnumerable<Check> All =>
    [
        Of(Couples.K, 5, "121.9566"), Of(Couples.K, 10, "246.2295"), Of(Couples.K, 30, "720.8311"), Of(Couples.K, 45, "1096.8648"), Of(Couples.K, 50, "1232.0473"),
        Of(Couples.N, -3, "-130.3228"), Of(Couples.N, 20, "584.2468"), Of(Couples.N, 40, "1097.7202"),
        Of(Couples.J, 30, "546.2072"), Of(Couples.E, 60, "787.0423"),
        Of(Couples.R, 10, "961.5172"), Of(Couples.R, 15, "1326.3461"), Of(Couples.R, 20.5, "1720.8744"),
        Of(Couples.S, 10, "1035.6090"), Of(Couples.S, 15, "1451.7958"), Of(Couples.S, 18, "1704.6113"),
        Of(Couples.B, 1, "449.5520"), Of(Couples.B, 3, "779.6788"), Of(Couples.B, 10, "1491.4228"),
    ];

    static Check Of(Thermocouple couple, double millivolts, string celsius) => Check.Printed(FormattableString.Invariant($"type {couple.Type} at {millivolts:0.000} mV"), celsius, "°C", Solved,
        () => couple.JunctionCelsius(millivolts, terminalCelsius: 0) ?? double.NaN, Standing.Computed);
}
