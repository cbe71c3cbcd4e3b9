using HotShop.Checks.Furnace;

namespace HotShop.Checks;

static class FurnaceHeatChecks
{
    public static IEnumerable<Check> All => [.. OpeningChecks.All, .. WallChecks.All, .. GlowChecks.All];
}
