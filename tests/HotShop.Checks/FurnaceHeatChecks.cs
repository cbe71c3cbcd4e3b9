namespace HotShop.Checks;

static class FurnaceHeatChecks
{
    public static IEnumerable<Check> All => [];
}
