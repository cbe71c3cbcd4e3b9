namespace HotShop.Checks;

static class UncertaintyChecks
{
    public static IEnumerable<Check> All => [];
}
