using HotShop.Checks.Gas;
using HotShop.Physics.Combustion;

namespace HotShop.Checks.Combustion;

/// <summary>Available heat of the gross heat, air at 25 °C.</summary>
static class AvailableHeatChecks
{
    const string Source = "computed apart from NASA/TP-2002-211556 and ISO 6976:2016", Chart = "a chart of the trade press; such charts differ from theory by a few points";

    static readonly (int Fahrenheit, string[] Methane, string Propane)[] table =
    [
        (1000, ["70.3", "68.6", "67.0", "62.0"], "70.8"), (1600, ["56.0", "53.2", "50.3", "41.8"], "55.5"), (2000, ["46.0", "42.3", "38.7", "27.7"], "44.8"),
        (2100, ["43.4", "39.6", "35.7", "24.1"], "42.1"), (2200, ["40.9", "36.8", "32.7", "20.4"], "39.3"), (2400, ["35.7", "31.1", "26.6", "13.1"], "33.8"),
    ];

    static readonly int[] excesses = [0, 10, 20, 50];

    public static IEnumerable<Check> All =>
    [
        .. from row in table from point in excesses.Zip(row.Methane) select Of("methane", point.First, row.Fahrenheit, point.Second),
        .. from row in table select Of("propane", 10, row.Fahrenheit, row.Propane),
        Check.Printed("methane, gross over net heat", "1.1097", "", Source, () => Balance("methane", 10, 2000).AvailableOfNet / Balance("methane", 10, 2000).AvailableOfGross, Standing.Computed),
        Check.Printed("propane, gross over net heat", "1.0862", "", Source, () => Balance("propane", 10, 2000).AvailableOfNet / Balance("propane", 10, 2000).AvailableOfGross, Standing.Computed),
        new("natural gas, 10 % excess air, flue 870 °F", "70", "%", 3, Chart, Standing.Read, () => 100 * Balance("methane", 10, 870).AvailableOfGross),
        new("natural gas, lean, 10 % excess air, flue 2100 °F: as pure methane", "39.6", "%", 0.2, Source, Standing.Computed, () => 100 * HeatBalance.Of(Mixes.Lean, 0.1, Celsius(2100)).AvailableOfGross),
    ];

    // The net heat of methane by heats of formation is 0.02 kJ/mol more than the standard's: a hair over half of the last digit.
    static Check Of(string fuel, int excess, int fahrenheit, string published) =>
        new($"{fuel}, {excess} % excess air, flue {fahrenheit} °F, available", published, "%", 0.055, Source, Standing.Computed, () => 100 * Balance(fuel, excess, fahrenheit).AvailableOfGross);

    static HeatBalance Balance(string fuel, double excessPercent, double fahrenheit) => HeatBalance.Of(Mixes.Pure(fuel), excessPercent / 100, Celsius(fahrenheit));

    internal static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
