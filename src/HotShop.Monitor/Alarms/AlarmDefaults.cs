using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Alarms;

/// <summary>What an alarm is set to where the configuration says nothing.</summary>
/// <param name="Appliance">Null: any kind of appliance without a row of its own.</param>
/// <param name="Limit">In <paramref name="Unit"/> (UCUM); null for alarms on a state.</param>
/// <param name="Source">Where the figures come from.</param>
internal sealed record AlarmDefault(
    string Kind, ApplianceKind? Appliance, int Priority, double? Limit, string? Unit, double Deadband, double OnDelaySeconds, double OffDelaySeconds, string Source);

internal static class AlarmDefaults
{
    const string Starting = "deadband and delays: starting values of EEMUA 191 and ISA-18.2 (temperature 1 % and 60 s, contact 5 to 15 s), from memory";

    /// <summary>A flame may be out this long where no call for heat is known: a cycling burner rests for minutes. Common practice.</summary>
    public const double FlameOutWithoutCallSeconds = 900;

    /// <summary>Below this an annealer's deviation leaves no lasting stress: at least 70 K under the strain point of soft studio glass. Common practice.</summary>
    public const double DriftFloorCelsius = 380;

    /// <summary>An annealer on its way up to a new setpoint may take this long. Common practice: two hours from cold.</summary>
    public const double DriftHeatUpSeconds = 4 * 3600;

    /// <summary>Periodic channels are silent after so many intervals, and not before <see cref="SilentAtLeastSeconds"/>. Common practice: 3 to 5.</summary>
    public const double SilentIntervals = 4, SilentAtLeastSeconds = 60, SilentOnChangeSeconds = 26 * 3600;

    static readonly AlarmDefault[] Table =
    [
        new(AlarmKinds.Overheat, ApplianceKind.Furnace, 1, 1290, "Cel", 10, 60, 60, "limit: above any cook (1200 to 1260 °C), common practice; " + Starting),
        new(AlarmKinds.Overheat, ApplianceKind.GloryHole, 2, 1350, "Cel", 14, 60, 60, "limit: above the hottest reheating, common practice; " + Starting),
        new(AlarmKinds.Overheat, ApplianceKind.Annealer, 1, 580, "Cel", 5, 60, 60, "limit: above annealing points in use (495 to 560 °C), below where ware sags, common practice"),
        new(AlarmKinds.Overheat, ApplianceKind.PickUpOven, 2, 620, "Cel", 5, 60, 60, "limit: above the 480 to 560 °C that parts are kept at, common practice"),
        new(AlarmKinds.FlameFailure, null, 1, null, null, 0, 90, 15, "on-delay: pre-purge and trial for ignition, common practice; safeguards act in seconds, this only tells"),
        new(AlarmKinds.FallingWithGas, ApplianceKind.Furnace, 1, 60, "K/h", 20, 600, 600, "limit: below the fall of a whole furnace without fire (about 80 K/h), own arithmetic"),
        new(AlarmKinds.FallingWithGas, ApplianceKind.GloryHole, 1, 200, "K/h", 60, 600, 600, "limit: a glory hole has less to cool, common practice"),
        new(AlarmKinds.AnnealerDrift, ApplianceKind.Annealer, 2, 15, "K", 4, 1800, 300, "limit: three times the 5 K an oven should keep; on-delay: a door opened for loading, common practice"),
        new(AlarmKinds.AnnealerDrift, ApplianceKind.PickUpOven, 2, 25, "K", 5, 1800, 300, "common practice"),
        new(AlarmKinds.Silent, null, 3, null, "s", 0, 0, 30, "3 to 5 intervals, common practice"),
        new(AlarmKinds.MainsLost, null, 1, null, null, 0, 10, 60, Starting),
        new(AlarmKinds.LockOut, ApplianceKind.Furnace, 1, null, null, 0, 10, 10, Starting),
        new(AlarmKinds.LockOut, null, 2, null, null, 0, 10, 10, Starting),
        new(AlarmKinds.CarbonMonoxide, null, 1, 70, "[ppm]", 5, 30, 300, "high alarm of workplace instruments, 70 ppm: a maker's default settings, 2020"),
        new(AlarmKinds.CarbonMonoxideWarning, null, 2, 35, "[ppm]", 5, 60, 300, "low alarm of workplace instruments, 35 ppm; NIOSH recommended limit over 8 h, 35 ppm"),
        new(AlarmKinds.CombustibleGas, null, 1, 20, "%", 2, 15, 300, "high alarm of fixed detectors, 20 % of the lower explosive limit: a maker's default settings, 2020"),
        new(AlarmKinds.CombustibleGasWarning, null, 2, 10, "%", 2, 30, 300, "low alarm of fixed detectors, 10 % of the lower explosive limit: the same"),
        new(AlarmKinds.ServiceTrouble, null, 2, null, null, 0, 120, 60, "a reconnect takes a minute, common practice"),
    ];

    /// <returns>Null where this kind of appliance has no such alarm.</returns>
    public static AlarmDefault? Of(string kind, ApplianceKind? appliance) =>
        Table.FirstOrDefault(row => row.Kind == kind && row.Appliance == appliance && appliance is not null)
        ?? Table.FirstOrDefault(row => row.Kind == kind && row.Appliance is null);

    public static IReadOnlyList<AlarmDefault> All => Table;
}
