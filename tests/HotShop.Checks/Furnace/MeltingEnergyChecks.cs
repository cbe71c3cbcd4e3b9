using HotShop.Physics.FurnaceHeat;
using HotShop.Physics.Statistics;

namespace HotShop.Checks.Furnace;

static class MeltingEnergyChecks
{
    const string Doe = "US Department of Energy, Energy and Environmental Profile of the US Glass Industry (2002), table 1.2, million Btu per short ton times 1.163";
    const string Studio = "25.5 kW round the clock and 60 kg a day, by hand";

    public static IEnumerable<Check> All =>
    [
        Check.Printed("specific energy of a studio furnace of 25.5 kW that melts 60 kg a day", "36.7", "GJ/t", Studio, () => MeltingEfficiency.GigajoulesPerTonne(25.5 * 24 / 60), Standing.Computed),
        Check.Printed("batch melting in pots and day tanks, lower end: 12.5 GJ/t", "3.47", "kWh/kg", "Römpp 1995 in IPCC AR4 WG III 7.4.5.3, converted by hand", () => MeltingEfficiency.KilowattHoursPerKilogram(12.5), Standing.Computed),
        Check.Printed("batch melting in pots and day tanks, upper end: 30 GJ/t", "8.33", "kWh/kg", "Römpp 1995 in IPCC AR4 WG III 7.4.5.3, converted by hand", () => MeltingEfficiency.KilowattHoursPerKilogram(30), Standing.Computed),
        .. from row in new[] { ("flat glass", 8.6, "10.0"), ("containers", 5.5, "6.4"), ("fibre", 8.4, "9.8"), ("pressed and blown glass", 7.3, "8.5") }
           select Check.Printed($"melting and refining of {row.Item1} in the United States", row.Item3, "GJ/t", Doe, () => MeltingEfficiency.GigajoulesPerTonne(MeltingEfficiency.KilowattHoursPerKilogramOfMillionBtuPerShortTon(row.Item2)), Standing.Computed),
        new("GJ/t of a million Btu per short ton", "1.163", "", 0.00005, "1055.05585262 J per Btu and 907.18474 kg per short ton, both exact", Standing.Computed,
            () => MeltingEfficiency.GigajoulesPerTonne(MeltingEfficiency.KilowattHoursPerKilogramOfMillionBtuPerShortTon(1))),
        Check.Printed("melting efficiency of 60 kg of cullet a day, 0.379 kWh/kg, in 612 kWh of gas", "0.0372", "", Studio, () => Efficiency().Value, Standing.Computed),
        Check.Printed("its standard uncertainty with 3 % of the heat and 2 % of the gas", "0.0013", "", "relative parts in quadrature, by hand", () => Efficiency().StandardUncertainty, Standing.Computed),
    ];

    static Estimate Efficiency() => MeltingEfficiency.Of(Estimate.Relative(60 * 0.379, 0.03), Estimate.Relative(612, 0.02));
}
