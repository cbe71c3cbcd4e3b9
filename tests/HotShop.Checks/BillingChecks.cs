namespace HotShop.Checks;

static class BillingChecks
{
    public static IEnumerable<Check> All => [];
}
