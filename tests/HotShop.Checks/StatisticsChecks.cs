using HotShop.Checks.Statistics;

namespace HotShop.Checks;

static class StatisticsChecks
{
    public static IEnumerable<Check> All =>
        [.. RegressionChecks.All, .. HouseGasChecks.All, .. GasFurnaceChecks.All, .. NileChecks.All, .. ChartChecks.All, .. RunLengthChecks.All, .. ResamplingChecks.All];
}
