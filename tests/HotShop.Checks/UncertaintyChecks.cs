using HotShop.Checks.Uncertainty;

namespace HotShop.Checks;

static class UncertaintyChecks
{
    public static IEnumerable<Check> All => [.. GuideChecks.All, .. CoverageChecks.All, .. DrawnChecks.All, .. MeterClassChecks.All, .. ReadyBudgetChecks.All];
}
