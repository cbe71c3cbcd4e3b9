using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;

namespace HotShop.Monitor.Money;

/// <summary>What energy was used for, as an owner asks it.</summary>
public enum Purpose { Holding, Melting, Working, HeatUp, Annealing, Idle, NotExplained }

static class Purposes
{
    /// <summary>By the mode that was in force: what a mode means depends on the appliance.</summary>
    public static Purpose Of(ApplianceKind kind, Mode mode) => (kind, mode) switch
    {
        (ApplianceKind.Shop, _) => Purpose.NotExplained,
        (_, Mode.Off or Mode.OutOfService) => Purpose.Idle,
        (ApplianceKind.Annealer, _) => Purpose.Annealing,
        (_, Mode.HeatUp) => Purpose.HeatUp,
        (ApplianceKind.Furnace, Mode.Charging) => Purpose.Melting,
        (_, Mode.Working or Mode.Charging) => Purpose.Working,
        // Holding, and cooling down with a fire still on.
        _ => Purpose.Holding,
    };

    public static string Words(this Purpose purpose) => purpose switch
    {
        Purpose.Holding => "holding",
        Purpose.Melting => "melting",
        Purpose.Working => "working",
        Purpose.HeatUp => "heat-up",
        Purpose.Annealing => "annealing",
        Purpose.Idle => "while off",
        _ => "not explained",
    };
}
