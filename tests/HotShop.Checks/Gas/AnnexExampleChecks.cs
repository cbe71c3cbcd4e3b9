using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Gas;

/// <summary>The worked examples of the standard. Example 2, with water vapour, does not give its own printed compression factor and is left out.</summary>
static class AnnexExampleChecks
{
    const string First = "ISO 6976:2016, Annex D, example 1", Third = "ISO 6976:2016, Annex D, example 3";

    static readonly GasMixture five = Mixes.Of(("methane", 0.933212), ("ethane", 0.025656), ("propane", 0.015368), ("nitrogen", 0.010350), ("carbon-dioxide", 0.015414));

    static readonly Dictionary<GasComponent, double> uncertainties = new()
    {
        [GasComponent.Find("methane")!] = 0.000346, [GasComponent.Find("ethane")!] = 0.000243, [GasComponent.Find("propane")!] = 0.000148,
        [GasComponent.Find("nitrogen")!] = 0.000195, [GasComponent.Find("carbon-dioxide")!] = 0.000111,
    };

    static readonly GasMixture eleven = Mixes.Of(
        ("methane", 0.922393), ("ethane", 0.025358), ("propane", 0.015190), ("n-butane", 0.000523), ("isobutane", 0.001512), ("n-pentane", 0.002846),
        ("isopentane", 0.002832), ("neopentane", 0.001015), ("n-hexane", 0.002865), ("nitrogen", 0.010230), ("carbon-dioxide", 0.015236));

    public static IEnumerable<Check> All =>
    [
        Check.Printed("gas of five parts, molar mass", "17.3884301", "kg/kmol", First, () => five.MolarMass),
        Check.Printed("gas of five parts at 15/15 °C, compression factor", "0.99776224", "", First, () => five.At(GasReference.Iso13443).CompressionFactor),
        Check.Printed("gas of five parts at 15 °C, gross per mole", "906.1799588", "kJ/mol", First, () => five.GrossKilojoulesPerMole(ReferenceTemperature.Celsius15)),
        Check.Printed("gas of five parts at 15 °C, gross per mole, standard uncertainty", "0.615609872", "kJ/mol", First,
            () => GrossUncertainty.PerMole(five, ReferenceTemperature.Celsius15, uncertainties).StandardUncertainty),
        Check.Printed("gas of five parts at 15 °C, gross per mass", "52.113961", "MJ/kg", First, () => five.GrossMegajoulesPerKilogram(ReferenceTemperature.Celsius15)),
        Check.Printed("gas of five parts at 15/15 °C, gross per volume", "38.410611", "MJ/m3", First, () => five.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre),
        Check.Printed("gas of five parts at 15/15 °C, gross per volume, standard uncertainty", "0.026267", "MJ/m3", First,
            () => GrossUncertainty.PerCubicMetre(five.At(GasReference.Iso13443), uncertainties).StandardUncertainty),
        .. Eleven("15/15 °C", GasReference.Iso13443, "39.73351", "35.86811", "0.76462", "0.62391", "50.30318", "45.40954"),
        .. Eleven("25/0 °C", GasReference.Normal, "41.89360", "37.85228", "0.80701", "0.62411", "53.02930", "47.91376"),
    ];

    static Check[] Eleven(string at, GasReference reference, string gross, string net, string density, string relative, string grossWobbe, string netWobbe) =>
    [
        Check.Printed($"gas of eleven parts at {at}, gross", gross, "MJ/m3", Third, () => eleven.At(reference).GrossMegajoulesPerCubicMetre),
        Check.Printed($"gas of eleven parts at {at}, net", net, "MJ/m3", Third, () => eleven.At(reference).NetMegajoulesPerCubicMetre),
        Check.Printed($"gas of eleven parts at {at}, density", density, "kg/m3", Third, () => eleven.At(reference).DensityKilogramsPerCubicMetre),
        Check.Printed($"gas of eleven parts at {at}, relative density", relative, "", Third, () => eleven.At(reference).RelativeDensity),
        Check.Printed($"gas of eleven parts at {at}, Wobbe index, gross", grossWobbe, "MJ/m3", Third, () => eleven.At(reference).GrossWobbeMegajoulesPerCubicMetre),
        Check.Printed($"gas of eleven parts at {at}, Wobbe index, net", netWobbe, "MJ/m3", Third, () => eleven.At(reference).NetWobbeMegajoulesPerCubicMetre),
    ];
}
