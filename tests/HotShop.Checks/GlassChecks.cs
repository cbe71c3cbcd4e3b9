using HotShop.Checks.Glass;

namespace HotShop.Checks;

static class GlassChecks
{
    public static IEnumerable<Check> All =>
        [.. CurveChecks.All, .. FluegelChecks.All, .. LakatosChecks.All, .. DensityChecks.All, .. HeatChecks.All, .. RawMaterialChecks.All, .. PieceChecks.All];
}
