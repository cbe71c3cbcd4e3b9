using HotShop.Checks.Gas;
using HotShop.Physics.Combustion;
using static HotShop.Checks.Combustion.AvailableHeatChecks;

namespace HotShop.Checks.Combustion;

/// <summary>Air warmed by the flue gas.</summary>
static class PreheatChecks
{
    const string Theory = "computed apart from NASA/TP-2002-211556 and ISO 6976:2016", Sheet = "US DOE, Process Heating Tip Sheet 1, fuel saved by warm air; table from memory, charts differ from theory by a point";

    static readonly int[] airs = [600, 800, 1000, 1200];

    static readonly (int Flue, string[] Printed, string[] Computed)[] saved =
    [
        (1600, ["17", "22", "26", "30"], ["16.1", "21.1", "25.7", "29.8"]), (2000, ["20", "26", "31", "35"], ["19.4", "25.1", "30.2", "34.8"]),
        (2200, ["23", "29", "34", "39"], ["21.7", "27.9", "33.3", "38.1"]), (2400, ["26", "32", "38", "43"], ["24.6", "31.3", "37.1", "42.0"]),
    ];

    public static IEnumerable<Check> All =>
    [
        .. from point in airs.Zip(["46.9", "51.0", "55.1", "59.4"])
           select Check.Printed($"methane, 10 % excess air of {point.First} °F, flue 2200 °F, available", point.Second, "%", Theory, () => 100 * Fire(2200, point.First).AvailableOfGross, Standing.Computed),
        .. from row in saved from point in airs.Zip(row.Computed)
           select Check.Printed($"methane, fuel saved by air of {point.First} °F, flue {row.Flue} °F", point.Second, "%", Theory, () => Saved(row.Flue, point.First), Standing.Computed),
        .. from row in saved from point in airs.Zip(row.Printed)
           select new Check($"natural gas, fuel saved by air of {point.First} °F, flue {row.Flue} °F", point.Second, "%", 1.5, Sheet, Standing.Memory, () => Saved(row.Flue, point.First)),
    ];

    static HeatBalance Fire(double flueFahrenheit, double airFahrenheit) => HeatBalance.Of(Mixes.Pure("methane"), 0.1, Celsius(flueFahrenheit), Celsius(airFahrenheit));

    static double Saved(double flueFahrenheit, double airFahrenheit) => 100 * Fire(flueFahrenheit, airFahrenheit).FuelSavedAgainst(HeatBalance.Of(Mixes.Pure("methane"), 0.1, Celsius(flueFahrenheit)));
}
