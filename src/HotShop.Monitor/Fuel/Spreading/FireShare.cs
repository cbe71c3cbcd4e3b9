using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Physics.Statistics;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>
/// Which share of its nameplate an appliance takes on average in each mode. All common practice, and wide on purpose: the meter's readings correct it.
/// </summary>
static class FireShare
{
    public static Estimate Of(ApplianceKind kind, Mode mode) => (kind, mode) switch
    {
        (_, Mode.Off or Mode.OutOfService) => Estimate.Exact(0),
        (ApplianceKind.Furnace, Mode.HeatUp) => new(0.7, 0.2),
        (ApplianceKind.Furnace, Mode.Charging) => new(0.5, 0.2),
        (ApplianceKind.Furnace, Mode.Working) => new(0.35, 0.15),
        (ApplianceKind.Furnace, Mode.Holding) => new(0.3, 0.15),
        (ApplianceKind.GloryHole, Mode.HeatUp) => new(0.8, 0.2),
        (ApplianceKind.GloryHole, Mode.Holding) => new(0.4, 0.2),
        (ApplianceKind.GloryHole, Mode.Working or Mode.Charging) => new(0.5, 0.2),
        (ApplianceKind.Furnace or ApplianceKind.GloryHole, Mode.CoolDown) => new(0.02, 0.02),
        // Most of an annealer's programme is cool-down on a falling curve.
        (_, Mode.HeatUp) => new(0.7, 0.2),
        (_, Mode.CoolDown) => new(0.15, 0.1),
        _ => new(0.25, 0.12),
    };
}
