using HotShop.Checks.Gas;
using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Combustion;

/// <summary>Air, oxygen and excess of air.</summary>
static class AirChecks
{
    const string Balance = "computed apart from the balance of the elements, air of 20.946 % oxygen", Quick = "the rule O2 / (20.946 - O2), computed apart";

    static GasMixture Methane => Mixes.Pure("methane");
    static GasMixture Propane => Mixes.Pure("propane");

    static readonly (int Percent, string Dry, string CarbonDioxide, string Wet, string Quick, string DryPropane)[] table =
    [
        (5, "1.108", "11.08", "0.907", "5.6", "1.084"), (10, "2.105", "10.52", "1.739", "11.2", "2.061"), (20, "3.825", "9.56", "3.211", "22.3", "3.753"),
        (30, "5.257", "8.76", "4.473", "33.5", "5.167"), (50, "7.506", "7.51", "6.526", "55.8", "7.395"), (100, "11.052", "5.53", "9.952", "111.7", "10.931"),
    ];

    public static IEnumerable<Check> All =>
    [
        Of("methane, oxygen needed", "2.0000", "mol/mol", () => FlueGas.Of(Methane, 0).OxygenNeedMoles), Of("propane, oxygen needed", "5.0000", "mol/mol", () => FlueGas.Of(Propane, 0).OxygenNeedMoles),
        Of("methane, air needed", "9.548", "m3/m3", () => FlueGas.Of(Methane, 0).AirNeedMoles), Of("propane, air needed", "23.87", "m3/m3", () => FlueGas.Of(Propane, 0).AirNeedMoles),
        Of("methane, most carbon dioxide, dry", "11.70", "%", () => 100 * FlueGas.Of(Methane, 0).DryCarbonDioxideFraction),
        Of("propane, most carbon dioxide, dry", "13.72", "%", () => 100 * FlueGas.Of(Propane, 0).DryCarbonDioxideFraction),
        new("oxygen of dry air", "20.95", "%", 0.005, "NASA, Earth fact sheet", Standing.Memory, () => 100 * DryAir.OxygenFraction),
        .. table.SelectMany(Rows),
    ];

    static IEnumerable<Check> Rows((int Percent, string Dry, string CarbonDioxide, string Wet, string Quick, string DryPropane) row)
    {
        var excess = row.Percent / 100.0;
        yield return Of($"methane, {row.Percent} % excess air, oxygen dry", row.Dry, "%", () => 100 * FlueGas.Of(Methane, excess).DryOxygenFraction);
        yield return Of($"methane, {row.Percent} % excess air, carbon dioxide dry", row.CarbonDioxide, "%", () => 100 * FlueGas.Of(Methane, excess).DryCarbonDioxideFraction);
        yield return Of($"methane, {row.Percent} % excess air, oxygen wet", row.Wet, "%", () => 100 * FlueGas.Of(Methane, excess).WetOxygenFraction);
        yield return Of($"propane, {row.Percent} % excess air, oxygen dry", row.DryPropane, "%", () => 100 * FlueGas.Of(Propane, excess).DryOxygenFraction);
        // The printed oxygen has three digits: 0.0005 of it is worth 0.003 of the excess at 5 % and 0.01 at 100 %.
        yield return new($"methane, excess air from {row.Dry} % oxygen dry", $"{row.Percent}", "%", 0.015, Balance, Standing.Computed, () => 100 * ExcessAir.FromDryOxygen(Methane, Published.Number(row.Dry) / 100));
        yield return new($"methane, excess air from {row.Wet} % oxygen wet", $"{row.Percent}", "%", 0.015, Balance, Standing.Computed, () => 100 * ExcessAir.FromWetOxygen(Methane, Published.Number(row.Wet) / 100));
        yield return Check.Printed($"methane, what the quick rule makes of {row.Percent} % excess air", row.Quick, "%", Quick, () => 100 * ExcessAir.QuickRule(FlueGas.Of(Methane, excess).DryOxygenFraction), Standing.Computed);
    }

    static Check Of(string what, string published, string unit, Func<double> ours) => Check.Printed(what, published, unit, Balance, ours, Standing.Computed);
}
