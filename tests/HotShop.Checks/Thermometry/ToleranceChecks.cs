using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>Limits of new wire where a hot shop meets them.</summary>
static class ToleranceChecks
{
    const string Iec = "IEC 60584-1:2013, tolerance classes, as makers of wire print them";
    const string Astm = "ASTM E230/E230M-12, initial tolerances, as makers of wire print them";

    public static IEnumerable<Check> All =>
    [
        Limit(ThermocoupleType.K, "iec-1", 1000, "4.0", Iec), Limit(ThermocoupleType.K, "iec-2", 1150, "8.625", Iec), Limit(ThermocoupleType.N, "iec-2", 300, "2.5", Iec),
        Limit(ThermocoupleType.S, "iec-1", 1150, "1.15", Iec), Limit(ThermocoupleType.S, "iec-2", 1150, "2.875", Iec), Limit(ThermocoupleType.B, "iec-3", 1150, "5.75", Iec),
        Limit(ThermocoupleType.K, "astm-special", 1150, "4.6", Astm), Limit(ThermocoupleType.R, "astm-standard", 1150, "2.875", Astm),
    ];

    static Check Limit(ThermocoupleType type, string name, double celsius, string limit, string source)
    {
        var one = ToleranceClass.Find(name)!;
        return Check.Printed($"tolerance of type {type}, {one.Title}, at {celsius:0} °C", limit, "°C", source, () => one.LimitCelsius(type, celsius) ?? double.NaN);
    }
}
