namespace HotShop.Checks;

static class CombustionChecks
{
    public static IEnumerable<Check> All => [];
}
