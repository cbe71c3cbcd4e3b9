using HotShop.Checks.Gas;

namespace HotShop.Checks;

static class FuelGasChecks
{
    public static IEnumerable<Check> All => [.. AnnexExampleChecks.All, .. TypicalGasChecks.All, .. PureGasChecks.All, .. ComponentChecks.All];
}
