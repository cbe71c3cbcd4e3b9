using HotShop.Checks.Billing;

namespace HotShop.Checks;

static class BillingChecks
{
    public static IEnumerable<Check> All => [.. UnitChecks.All, .. BillChecks.All, .. VolumeChecks.All, .. AltitudeChecks.All, .. DialChecks.All, .. PropaneChecks.All];
}
