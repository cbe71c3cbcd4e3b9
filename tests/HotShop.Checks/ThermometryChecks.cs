using HotShop.Checks.Thermometry;

namespace HotShop.Checks;

static class ThermometryChecks
{
    public static IEnumerable<Check> All =>
    [
        .. ReferenceTableChecks.All, .. InverseChecks.All, .. CompensationChecks.All, .. WiringFaultChecks.All, .. ToleranceChecks.All, .. CalibrationChecks.All,
    ];
}
