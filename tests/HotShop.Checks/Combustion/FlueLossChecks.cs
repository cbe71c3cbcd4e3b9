using HotShop.Checks.Gas;
using HotShop.Physics.Combustion;

namespace HotShop.Checks.Combustion;

/// <summary>Heat up the flue, by enthalpies and by the formula of boilers.</summary>
static class FlueLossChecks
{
    const string Enthalpies = "computed apart from the same enthalpies, methane, air at 25 °C", Boiler = "Siegert's formula with the constants of EN 50379 (from memory), computed apart";

    public static IEnumerable<Check> All =>
        from row in new[] { (200, 2, "7.65", "7.77"), (200, 3, "7.99", "8.11"), (800, 2, "33.9", "37.1"), (1200, 2, "51.4", "58.7"), (1200, 3, "53.7", "61.2") }
        from check in Rows(row.Item1, row.Item2 / 100.0, row.Item3, row.Item4)
        select check;

    static IEnumerable<Check> Rows(double celsius, double oxygen, string siegert, string exact)
    {
        yield return Check.Printed($"methane, flue {celsius} °C, {100 * oxygen:0} % oxygen dry, loss of the net heat", exact, "%", Enthalpies,
            () => 100 * HeatBalance.Of(Mixes.Pure("methane"), ExcessAir.FromDryOxygen(Mixes.Pure("methane"), oxygen), celsius).FlueLossOfNet, Standing.Computed);
        yield return Check.Printed($"natural gas, flue {celsius} °C, {100 * oxygen:0} % oxygen dry, loss by the boiler formula", siegert, "%", Boiler,
            () => 100 * Siegert.NaturalGas.FlueLossOfNet(celsius, 25, oxygen), Standing.Memory);
    }
}
