namespace HotShop.Checks;

static class FuelGasChecks
{
    public static IEnumerable<Check> All => [];
}
