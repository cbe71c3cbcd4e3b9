using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Heat content after Sharp and Ginther 1951, and what melting takes.</summary>
static class HeatChecks
{
    const string SharpGinther = "Sharp and Ginther, J. Am. Ceram. Soc. 34 (1951) 260, coefficients from memory, computed apart";
    const string Richet = "heat capacities of Richet 1987 and Richet and Bottinga, from memory, with the glass transition at 565 °C; agreement within 4 %";
    const string EuReference = "EU reference document on glass manufacture (2001, 2013), from memory";

    static readonly GlassProfile Window = GlassProfile.WindowSodaLime, Studio = GlassProfile.SoftStudioSodaLime;

    static readonly GlassHeat EightOxides = new(GlassComposition.OfWeights(new Dictionary<Oxide, double>
    {
        [Oxide.SiO2] = 50, [Oxide.Al2O3] = 5, [Oxide.CaO] = 5, [Oxide.MgO] = 5, [Oxide.Na2O] = 8, [Oxide.K2O] = 7, [Oxide.B2O3] = 5, [Oxide.PbO] = 15,
    }));

    public static IEnumerable<Check> All =>
    [
        .. new[] { (100, "83.0"), (482, "501.6"), (1000, "1173.9"), (1100, "1309.8"), (1150, "1378.2"), (1200, "1446.9"), (1400, "1724.1") }
            .Select(r => Check.Printed($"window glass, heat content at {r.Item1} °C", r.Item2, "kJ/kg", SharpGinther, () => Window.Heat.ContentKilojoulesPerKilogram(r.Item1), Standing.Memory)),
        .. new[] { (482, "483"), (1000, "1200"), (1150, "1415"), (1200, "1487"), (1400, "1773") }
            .Select(r => new Check($"window glass, heat content at {r.Item1} °C", r.Item2, "kJ/kg", 0.04 * double.Parse(r.Item2, System.Globalization.CultureInfo.InvariantCulture), Richet, Standing.Memory, () => Window.Heat.ContentKilojoulesPerKilogram(r.Item1))),
        .. new[] { (20, "13.556"), (500, "452.457"), (1150, "1176.542"), (1400, "1468.474") }
            .Select(r => Check.Printed($"glass of eight oxides, heat content at {r.Item1} °C", r.Item2, "kJ/kg", SharpGinther, () => EightOxides.ContentKilojoulesPerKilogram(r.Item1), Standing.Memory)),
        Check.Printed("window glass, mean specific heat 0 to 1100 °C", "1.1907", "kJ/(kg.K)", SharpGinther, () => Window.Heat.MeanKilojoulesPerKilogramKelvin(1100), Standing.Memory),
        new("window melt, specific heat at 1150 °C", "1.37", "kJ/(kg.K)", 0.005, SharpGinther, Standing.Memory, () => Window.Heat.SpecificKilojoulesPerKilogramKelvin(1150)),
        new("window glass, cullet from 20 to 1150 °C", "0.3786", "kW.h/kg", 0.00005, SharpGinther, Standing.Memory, () => Window.MeltingKilojoulesPerKilogram(20, 1150, 0) / 3600),
        new("window glass, cullet from 20 to 1500 °C, as it leaves a large furnace", "1.85", "MJ/kg", 0.005, SharpGinther, Standing.Memory, () => Window.MeltingKilojoulesPerKilogram(20, 1500, 0) / 1000),
        Check.Printed("window glass from batch, 20 to 1150 °C", "2053.1", "kJ/kg", SharpGinther + "; reactions and gases: " + EuReference, () => Window.MeltingKilojoulesPerKilogram(20, 1150, 1), Standing.Memory),
        Check.Printed("soft studio glass, cullet from 20 to 1150 °C", "1383.50", "kJ/kg", SharpGinther, () => Studio.MeltingKilojoulesPerKilogram(20, 1150, 0), Standing.Memory),
        Check.Printed("soft studio glass, half batch, 20 to 1150 °C", "1728.5", "kJ/kg", SharpGinther + "; reactions and gases: " + EuReference, () => Studio.MeltingKilojoulesPerKilogram(20, 1150, 0.5), Standing.Memory),
        Check.Printed("lead crystal, cullet from 20 to 1150 °C", "938.49", "kJ/kg", SharpGinther, () => GlassProfile.LeadCrystal.MeltingKilojoulesPerKilogram(20, 1150, 0), Standing.Memory),
        Check.Printed("lead crystal from batch, 20 to 1150 °C", "1445.5", "kJ/kg", SharpGinther + "; reactions and gases: " + EuReference, () => GlassProfile.LeadCrystal.MeltingKilojoulesPerKilogram(20, 1150, 1), Standing.Memory),
        Check.Printed("borosilicate 3.3 from batch, 20 to 1150 °C", "1826.2", "kJ/kg", SharpGinther + "; reactions and gases: " + EuReference, () => GlassProfile.Borosilicate33.MeltingKilojoulesPerKilogram(20, 1150, 1), Standing.Memory),
        new("soda-lime from batch in a large furnace at 1500 °C, heat in the glass and its reactions", "2.38", "GJ/t", 0.1, EuReference + ": 0.49 reaction and 1.89 in the glass", Standing.Memory, () => (Window.MeltingKilojoulesPerKilogram(20, 1500, 1) - Window.BatchGasesKilojoulesPerKilogram) / 1000),
        new("20 kg of cold cullet into 100 kg at 1200 °C, no heat supplied", "1025.4", "Cel", 0.05, SharpGinther, Standing.Memory, () => MeltOut.MixedCelsius(Window.Heat, 100, 1200, 20, 20)),
        new("20 kg of cullet from 20 to 1230 °C", "8.18", "kW.h", 0.005, SharpGinther, Standing.Memory, () => 20 * Window.MeltingKilojoulesPerKilogram(20, 1230, 0) / 3600),
        new("20 kg of cullet to 1230 °C with 5 kW into the glass", "1.64", "h", 0.005, SharpGinther, Standing.Memory, () => MeltOut.Time(20, Window.MeltingKilojoulesPerKilogram(20, 1230, 0), 5).TotalHours),
    ];
}
