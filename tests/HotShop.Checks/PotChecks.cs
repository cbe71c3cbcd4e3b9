namespace HotShop.Checks;

static class PotChecks
{
    public static IEnumerable<Check> All => [];
}
