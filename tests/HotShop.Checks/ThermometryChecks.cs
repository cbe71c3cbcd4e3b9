namespace HotShop.Checks;

static class ThermometryChecks
{
    public static IEnumerable<Check> All => [];
}
