namespace HotShop.Checks;

static class StatisticsChecks
{
    public static IEnumerable<Check> All => [];
}
