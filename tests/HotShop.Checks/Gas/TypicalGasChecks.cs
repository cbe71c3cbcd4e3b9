using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Gas;

/// <summary>The profiles of gases that are piped or delivered.</summary>
static class TypicalGasChecks
{
    const string Iso = "computed apart from the tables of ISO 6976:2016", Cfr = "40 CFR 98 table C-1 (81 FR 89188, 2016)";

    public static IEnumerable<Check> All =>
    [
        new("natural gas, lean, relative density at 15 °C", "0.5838", "", 0.0001, Iso, Standing.Computed, () => Mixes.Lean.At(GasReference.Iso13443).RelativeDensity),
        new("natural gas, lean, at 15/15 °C, gross", "37.82", "MJ/m3", 0.005, Iso, Standing.Computed, () => Mixes.Lean.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre),
        new("natural gas, lean, at 15/15 °C, net", "34.08", "MJ/m3", 0.005, Iso, Standing.Computed, () => Mixes.Lean.At(GasReference.Iso13443).NetMegajoulesPerCubicMetre),
        new("natural gas, lean, at 25/0 °C, gross", "39.87", "MJ/m3", 0.005, Iso, Standing.Computed, () => Mixes.Lean.At(GasReference.Normal).GrossMegajoulesPerCubicMetre),
        new("natural gas, lean, at 60 °F and 14.696 psia, gross", "1013", "Btu/ft3", 0.5, Iso, Standing.Computed, () => PureGasChecks.Btu(Mixes.Lean.At(Bases.Gpa).GrossMegajoulesPerCubicMetre)),
        new("natural gas, lean, at 60 °F and 14.73 psia, gross", "1015", "Btu/ft3", 0.5, Iso, Standing.Computed, () => PureGasChecks.Btu(Mixes.Lean.At(GasReference.Us).GrossMegajoulesPerCubicMetre)),
        new("natural gas, lean, at 15/15 °C, Wobbe index, gross", "49.49", "MJ/m3", 0.005, Iso, Standing.Computed, () => Mixes.Lean.At(GasReference.Iso13443).GrossWobbeMegajoulesPerCubicMetre),
        new("natural gas, lean, gross at 25/0 °C over that at 15/15 °C", "1.0543", "", 0.00005, Iso, Standing.Computed,
            () => Mixes.Lean.At(GasReference.Normal).GrossMegajoulesPerCubicMetre / Mixes.Lean.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre),
        .. Hydrogen("natural-gas-5-hydrogen", "5 %", "36.52", "48.89"), .. Hydrogen("natural-gas-10-hydrogen", "10 %", "35.23", "48.30"), .. Hydrogen("natural-gas-20-hydrogen", "20 %", "32.65", "47.10"),
        new("natural gas, lean, gross: the average used for reporting", "1.026e-3", "MMBtu/ft3", 0.02e-3, Cfr, Standing.Read, () => PureGasChecks.Btu(Mixes.Lean.At(GasReference.Us).GrossMegajoulesPerCubicMetre) / 1e6),
        new("propane vapour, gross", "2.516e-3", "MMBtu/ft3", 0.002e-3, Cfr, Standing.Read, () => PureGasChecks.Btu(Mixes.Pure("propane").At(Bases.Gpa).IdealGrossMegajoulesPerCubicMetre) / 1e6),
    ];

    // The share of butanes and pentanes is lumped in the source: 0.01 MJ/m³.
    static Check[] Hydrogen(string profile, string share, string gross, string wobbe) =>
    [
        new($"natural gas with {share} hydrogen at 15/15 °C, gross", gross, "MJ/m3", 0.01, Iso, Standing.Computed, () => GasProfile.Find(profile)!.Mixture.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre),
        new($"natural gas with {share} hydrogen at 15/15 °C, Wobbe index, gross", wobbe, "MJ/m3", 0.01, Iso, Standing.Computed, () => GasProfile.Find(profile)!.Mixture.At(GasReference.Iso13443).GrossWobbeMegajoulesPerCubicMetre),
    ];
}
