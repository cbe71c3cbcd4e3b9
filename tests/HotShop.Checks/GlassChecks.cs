namespace HotShop.Checks;

static class GlassChecks
{
    public static IEnumerable<Check> All => [];
}
