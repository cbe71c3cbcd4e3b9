using HotShop.Checks.Combustion;

namespace HotShop.Checks;

static class CombustionChecks
{
    public static IEnumerable<Check> All => [.. AirChecks.All, .. EnthalpyChecks.All, .. FlueLossChecks.All, .. AvailableHeatChecks.All, .. PreheatChecks.All, .. CarbonDioxideChecks.All];
}
