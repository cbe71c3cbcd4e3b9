using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Gas;

/// <summary>Pure gases by the cubic metre, the kilogram and the cubic foot.</summary>
static class PureGasChecks
{
    const string Iso = "computed from the tables of ISO 6976:2016", Gpa = "GPA 2145, ideal gas at 60 °F and 14.696 psia; read in an open program";

    public static IEnumerable<Check> All =>
    [
        .. Volumes("methane", "37.779", "34.013", "39.828", "35.892", "0.5547", "50.72", "55.514", "50.027"),
        .. Volumes("ethane", "66.630", "60.944", "70.329", "64.379", "1.0465", "65.13", "51.904", "47.512"),
        .. Volumes("propane", "95.664", "88.009", "101.180", "93.153", "1.5497", "76.85", "50.326", "46.334"),
        .. Volumes("n-butane", "126.06", "116.34", "133.85", "123.61", "2.0761", "87.49", "49.506", "45.720"),
        .. Volumes("isobutane", "125.11", "115.43", "132.68", "122.50", "2.0671", "87.02", "49.348", "45.562"),
        .. Volumes("hydrogen", "12.103", "10.224", "12.754", "10.790", "0.0696", "45.89", "141.79", "119.96"),
        .. IdealFeet("methane", "1010.0", null), .. IdealFeet("ethane", "1769.7", "1618.7"), .. IdealFeet("propane", "2516.1", "2314.9"),
        .. IdealFeet("isobutane", "3251.9", "3000.5"), .. IdealFeet("n-butane", "3262.3", "3010.8"), .. IdealFeet("hydrogen", "324.2", "273.9"), .. IdealFeet("carbon-monoxide", "320.5", null),
        RealFeet("methane", "1014.3", 0.05), RealFeet("propane", "2568", 0.5),
    ];

    static Check[] Volumes(string name, string gross15, string net15, string gross25, string net25, string relative, string wobbe, string grossMass, string netMass)
    {
        var gas = Mixes.Pure(name);
        return
        [
            Of($"{name} at 15/15 °C, gross", gross15, "MJ/m3", () => gas.At(GasReference.Iso13443).GrossMegajoulesPerCubicMetre),
            Of($"{name} at 15/15 °C, net", net15, "MJ/m3", () => gas.At(GasReference.Iso13443).NetMegajoulesPerCubicMetre),
            Of($"{name} at 25/0 °C, gross", gross25, "MJ/m3", () => gas.At(GasReference.Normal).GrossMegajoulesPerCubicMetre),
            Of($"{name} at 25/0 °C, net", net25, "MJ/m3", () => gas.At(GasReference.Normal).NetMegajoulesPerCubicMetre),
            Of($"{name} at 15 °C, relative density", relative, "", () => gas.At(GasReference.Iso13443).RelativeDensity),
            Of($"{name} at 15/15 °C, Wobbe index, gross", wobbe, "MJ/m3", () => gas.At(GasReference.Iso13443).GrossWobbeMegajoulesPerCubicMetre),
            Of($"{name} at 25 °C, gross per mass", grossMass, "MJ/kg", () => gas.GrossMegajoulesPerKilogram(ReferenceTemperature.Celsius25)),
            Of($"{name} at 25 °C, net per mass", netMass, "MJ/kg", () => gas.NetMegajoulesPerKilogram(ReferenceTemperature.Celsius25)),
        ];
    }

    static Check Of(string what, string published, string unit, Func<double> ours) => Check.Printed(what, published, unit, Iso, ours, Standing.Computed);

    // GPA and ISO take their heats of combustion from different compilations: 0.1 Btu/ft³ apart at most.
    static IEnumerable<Check> IdealFeet(string name, string gross, string? net)
    {
        var gas = Mixes.Pure(name);
        yield return new Check($"{name}, gross", gross, "Btu/ft3", 0.15, Gpa, Standing.Read, () => Btu(gas.At(Bases.Gpa).IdealGrossMegajoulesPerCubicMetre));
        if (net is not null) yield return new Check($"{name}, net", net, "Btu/ft3", 0.15, Gpa, Standing.Read, () => Btu(gas.At(Bases.Gpa).IdealNetMegajoulesPerCubicMetre));
    }

    static Check RealFeet(string name, string gross, double tolerance) =>
        new($"{name}, real gas at 60 °F and 14.73 psia, gross", gross, "Btu/ft3", tolerance, Iso, Standing.Computed, () => Btu(Mixes.Pure(name).At(GasReference.Us).GrossMegajoulesPerCubicMetre));

    internal static double Btu(double megajoulesPerCubicMetre) =>
        EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(megajoulesPerCubicMetre) / EnergyUnits.KilowattHoursPerCubicMetreOfBtu(1);
}
