using HotShop.Physics.Energy;

namespace HotShop.Checks.Billing;

/// <summary>Volumes at one condition as volumes at another.</summary>
static class VolumeChecks
{
    const string Ideal = "computed from the definitions of the bases, ideal gas";

    public static IEnumerable<Check> All =>
    [
        Of("1 m³ at 0 °C, at 15 °C", "1.05491", () => GasVolume.ToBase(1, 0, Atmosphere.StandardPascals, 0, BaseConditions.Iso13443)),
        Of("1 m³ at 15 °C and 101.325 kPa, at 60 °F and 14.73 psia", "0.99961", () => GasVolume.ToBase(1, 0, Atmosphere.StandardPascals, 15, BaseConditions.Us)),
        Of("1 m³ at 15 °C, at 0 °C", "0.94794", () => GasVolume.ToBase(1, 0, Atmosphere.StandardPascals, 15, BaseConditions.Normal)),
        .. from at in new[] { (20.0, "1.07322"), (21.1, "1.07725"), (25, "1.09152") }
           select Of($"1 m³ at 0 °C, at {at.Item1} °C", at.Item2, () => GasVolume.ToBase(1, 0, Atmosphere.StandardPascals, 0, new BaseConditions("a mass meter's", at.Item1, Atmosphere.StandardPascals))),
        .. from at in new[] { (0, "1.1305"), (32, "1.0569"), (40, "1.0400"), (50, "1.0196"), (60, "1.0000"), (70, "0.9811"), (80, "0.9629"), (90, "0.9454") }
           select Of($"temperature factor to 60 °F of a meter at {at.Item1} °F", at.Item2, () => GasVolume.BaseFactor(0, BaseConditions.Us.PressurePascals, (at.Item1 - 32) / 1.8, BaseConditions.Us)),
        Of("factor of 20 °C and 21 mbar to 15 °C and 101.325 kPa", "1.003316", () => GasVolume.BaseFactor(2100, Atmosphere.StandardPascals, 20, BaseConditions.Iso13443)),
        Of("the same with a gas that deviates 0.07 % less at base", "1.004018", () => GasVolume.BaseFactor(2100, Atmosphere.StandardPascals, 20, BaseConditions.Iso13443, 1, 1 / 1.0007)),
    ];

    static Check Of(string what, string published, Func<double> ours) => Check.Printed(what, published, "", Ideal, ours, Standing.Computed);
}
