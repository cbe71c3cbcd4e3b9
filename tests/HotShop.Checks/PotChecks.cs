using HotShop.Checks.Pots;

namespace HotShop.Checks;

static class PotChecks
{
    public static IEnumerable<Check> All => [.. PotGeometryChecks.All];
}
