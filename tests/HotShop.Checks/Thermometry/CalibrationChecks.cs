namespace HotShop.Checks.Thermometry;

/// <summary>What calibrations and budgets of a couple come to.</summary>
static class CalibrationChecks
{
    public static IEnumerable<Check> All => [];
}
