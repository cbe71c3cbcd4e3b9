using HotShop.Physics.Energy;

namespace HotShop.Checks.Billing;

/// <summary>The dial of a meter by the clock.</summary>
static class DialChecks
{
    const string Service = "a gas fitter's service table", Code = "NFPA 54 (National Fuel Gas Code), table of dials, to whole cubic feet";

    public static IEnumerable<Check> All =>
    [
        Feet("half-foot dial in 22 s", 0.5, 22, "81.82", Service), new("half-foot dial in 29 s", "62", "ft3/h", 0.5, Code, Standing.Read, () => FeetPerHour(0.5, 29)),
        Feet("one-foot dial in 40 s", 1, 40, "90.0", Service), Feet("one-foot dial in 36 s", 1, 36, "100.0", Service),
        Feet("two-foot dial in 10 s", 2, 10, "720.0", Service), Feet("five-foot dial in 10 s", 5, 10, "1800.0", Service),
        new("half-foot dial in 22 s, gas of 1,000 Btu/ft³", "81820", "Btu/h", 5, Service, Standing.Read,
            () => FeetPerHour(0.5, 22) * EnergyUnits.CubicMetresPerCubicFoot * EnergyUnits.KilowattHoursPerCubicMetreOfBtu(1000) * 1e5 / EnergyUnits.KilowattHoursPerTherm),
        Check.Printed("pointer of 0.01 m³ in 16 s", "2.25", "m3/h", Service, () => DialClock.Read(0.01, [100, 116]).CubicMetresPerHour.Value),
        new("pointer of 0.01 m³ in 16 s, in feet", "79.5", "ft3/h", 0.05, Service, Standing.Read, () => DialClock.Read(0.01, [100, 116]).CubicMetresPerHour.Value / EnergyUnits.CubicMetresPerCubicFoot),
    ];

    static Check Feet(string what, double cubicFeet, double seconds, string published, string source) => Check.Printed(what, published, "ft3/h", source, () => FeetPerHour(cubicFeet, seconds));

    static double FeetPerHour(double cubicFeet, double seconds) =>
        DialClock.Read(cubicFeet * EnergyUnits.CubicMetresPerCubicFoot, [0, seconds]).CubicMetresPerHour.Value / EnergyUnits.CubicMetresPerCubicFoot;
}
