using HotShop.Physics.FuelGases;
using static HotShop.Physics.FuelGases.ReferenceTemperature;

namespace HotShop.Checks.Gas;

/// <summary>Every figure of the standard's component tables, against a second copy of them.</summary>
static class ComponentChecks
{
    /// <summary>The table's figures go in as they stand.</summary>
    const double AsItStands = 1e-9;

    const string Source = "ISO 6976:2016, Annex A";

    static readonly (string Column, string What, string Unit, Func<GasComponent, double> Ours)[] columns =
    [
        ("molarMass", "molar mass", "kg/kmol", c => c.MolarMass),
        ("s0", "summation factor at 0 °C", "", c => c.Summation(Celsius0)),
        ("s15", "summation factor at 15 °C", "", c => c.Summation(Celsius15)),
        ("s60F", "summation factor at 60 °F", "", c => c.Summation(Fahrenheit60)),
        ("s20", "summation factor at 20 °C", "", c => c.Summation(Celsius20)),
        ("us", "summation factor, standard uncertainty", "", c => c.SummationUncertainty),
        ("h0", "gross per mole at 0 °C", "kJ/mol", c => c.GrossKilojoulesPerMole(Celsius0)),
        ("h15", "gross per mole at 15 °C", "kJ/mol", c => c.GrossKilojoulesPerMole(Celsius15)),
        ("h60F", "gross per mole at 60 °F", "kJ/mol", c => c.GrossKilojoulesPerMole(Fahrenheit60)),
        ("h20", "gross per mole at 20 °C", "kJ/mol", c => c.GrossKilojoulesPerMole(Celsius20)),
        ("h25", "gross per mole at 25 °C", "kJ/mol", c => c.GrossKilojoulesPerMole(Celsius25)),
        ("uh", "gross per mole, standard uncertainty", "kJ/mol", c => c.GrossUncertaintyKilojoulesPerMole),
    ];

    public static IEnumerable<Check> All => [.. Components(), .. Air(), .. Vaporisation()];

    static IEnumerable<Check> Components()
    {
        foreach (var row in Published.Rows("Gas.iso6976-components.csv"))
            foreach (var (column, what, unit, ours) in columns)
                if (row[column].Length > 0)
                    yield return new Check($"{row["component"]}, {what}", row[column], unit, AsItStands, Source, Standing.Read, () => ours(GasComponent.Find(row["component"])!));
    }

    // A gas whose molar mass is that of the air has the relative density Z of the air over its own Z: nitrogen of 28.0134 kg/kmol does as well.
    static IEnumerable<Check> Air() =>
        from air in new[] { (Celsius0, "0 °C", "0.999419"), (Celsius15, "15 °C", "0.999595"), (Fahrenheit60, "60 °F", "0.999601"), (Celsius20, "20 °C", "0.999645") }
        select Check.Printed($"compression factor of dry air at {air.Item2}", air.Item3, "", Source, () => AirCompression(air.Item1));

    static double AirCompression(ReferenceTemperature temperature)
    {
        var nitrogen = Mixes.Pure("nitrogen").At(new GasReference(Celsius15, Bases.At(temperature)));
        return nitrogen.RelativeDensity * nitrogen.CompressionFactor * 28.96546 / 28.0134;
    }

    static IEnumerable<Check> Vaporisation() =>
        from water in new[] { (Celsius0, "0 °C", "45.064"), (Celsius15, "15 °C", "44.431"), (Fahrenheit60, "60 °F", "44.408"), (Celsius20, "20 °C", "44.222"), (Celsius25, "25 °C", "44.013") }
        select new Check($"heat of vaporisation of water at {water.Item2}", water.Item3, "kJ/mol", AsItStands, Source, Standing.Read,
            () => Mixes.Pure("hydrogen").GrossKilojoulesPerMole(water.Item1) - Mixes.Pure("hydrogen").NetKilojoulesPerMole(water.Item1));
}
