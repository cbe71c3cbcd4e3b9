using HotShop.Physics.Uncertainty;

namespace HotShop.Checks.Uncertainty;

/// <summary>What the law allows a meter or scale to be wrong by.</summary>
static class MeterClassChecks
{
    const string New = "Directive 2014/32/EU, annex IV (as OIML R 137)", Old = "French order of 21 October 2010, article 18",
        Electric = "Directive 2014/32/EU, annex V, table 2", Scale = "Non-automatic Weighing Instruments Regulations 1995 (United Kingdom), schedule 2, table 3";

    static Check Gas(string what, string percent, double index, double flow, string source, bool isInService = false, Standing standing = Standing.Read) =>
        Check.Printed(what, percent, "%", source, () => MeterClass.GasLimitPercent(index, flow, 0.04, 6, isInService) ?? double.NaN, standing);

    static Check Weighed(string what, string kilograms, double load, string source = Scale) =>
        Check.Printed(what, kilograms, "kg", source, () => MeterClass.ScaleLimitKilograms(load, 0.02) ?? double.NaN);

    public static IEnumerable<Check> All =>
    [
        Gas("gas meter class 1.5, upper flows", "1.5", 1.5, 3, New),
        Gas("gas meter class 1.5, lower flows", "3", 1.5, 0.3, New),
        Gas("gas meter class 1, upper flows", "1", 1, 6, New),
        Gas("gas meter class 1, lower flows, at Qmin", "2", 1, 0.04, New),
        Gas("gas meter class 0.5, upper flows", "0.5", 0.5, 3, "OIML R 137", standing: Standing.Memory),
        Gas("gas meter of Qmax 6 m³/h just above Qt of 0.1 Qmax", "1.5", 1.5, 0.6005, "OIML R 137", standing: Standing.Memory),
        Gas("gas meter of Qmax 6 m³/h just below Qt of 0.1 Qmax", "3.0", 1.5, 0.5995, "OIML R 137", standing: Standing.Memory),
        Gas("gas meter class 1.5 in service, upper flows", "3", 1.5, 3, Old, isInService: true),
        Gas("gas meter class 1.5 in service, lower flows", "6", 1.5, 0.3, Old, isInService: true),
        Gas("gas meter class 1 in service, upper flows", "2", 1, 3, Old, isInService: true),
        Gas("gas meter class 1 in service, lower flows", "4", 1, 0.3, Old, isInService: true),
        Check.Printed("electricity meter class A", "3.5", "%", Electric, () => MeterClass.ElectricityLimitPercent('A') ?? double.NaN),
        Check.Printed("electricity meter class B", "2.000", "%", Electric, () => MeterClass.ElectricityLimitPercent('B') ?? double.NaN),
        Check.Printed("electricity meter class C", "0.700", "%", Electric, () => MeterClass.ElectricityLimitPercent('C') ?? double.NaN),
        Weighed("scale class III, steps of 20 g, up to 500 of them (half a step)", "0.0100", 10),
        Weighed("scale class III, steps of 20 g, above 500 of them (one step)", "0.0200", 10.02),
        Weighed("scale class III, steps of 20 g, up to 2000 of them (one step)", "0.0200", 40),
        Weighed("scale class III, steps of 20 g, above 2000 of them (one and a half)", "0.0300", 40.02),
        Weighed("scale class III, steps of 20 g, up to 10,000 of them (one and a half)", "0.0300", 200),
    ];
}
