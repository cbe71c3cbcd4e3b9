namespace HotShop.Monitor.Configuration;

/// <summary>Names of the kinds of alarm, as the configuration, ids and interfaces spell them, and what their limits are measured in.</summary>
public static class AlarmKinds
{
    public const string Overheat = "overheat", FlameFailure = "flame-failure", FallingWithGas = "falling-with-gas", AnnealerDrift = "annealer-drift",
        Silent = "silent", MainsLost = "mains-lost", LockOut = "lock-out",
        CarbonMonoxide = "carbon-monoxide", CarbonMonoxideWarning = "carbon-monoxide-warning",
        CombustibleGas = "combustible-gas", CombustibleGasWarning = "combustible-gas-warning", ServiceTrouble = "service-trouble";

    /// <summary>Those that an appliance may have; <see cref="ServiceTrouble"/> belongs to the service itself.</summary>
    public static IReadOnlyList<string> OfAppliances { get; } =
    [
        Overheat, FlameFailure, FallingWithGas, AnnealerDrift, Silent, MainsLost, LockOut,
        CarbonMonoxide, CarbonMonoxideWarning, CombustibleGas, CombustibleGasWarning,
    ];

    /// <summary>Example of a limit of this kind as people type it; null where the kind has no limit.</summary>
    public static string? LimitExample(string kind) => kind switch
    {
        Overheat => "1290 °C",
        AnnealerDrift => "15 K",
        FallingWithGas => "60 K/h",
        CarbonMonoxide or CarbonMonoxideWarning => "70 ppm",
        CombustibleGas or CombustibleGasWarning => "20 %LEL",
        Silent => "120 s",
        _ => null,
    };

    /// <summary>A typed limit in the unit the alarm works in: °C, K, K/h, ppm, % of the lower explosive limit, s.</summary>
    /// <returns>Null where the unit does not belong to the kind.</returns>
    public static double? CanonicalLimit(string kind, Limit limit) => kind switch
    {
        Overheat => limit.Celsius,
        AnnealerDrift => limit.Kelvins,
        FallingWithGas => limit.Unit.EndsWith("/h", StringComparison.Ordinal) ? (limit with { Unit = limit.Unit[..^2] }).Kelvins : null,
        CarbonMonoxide or CarbonMonoxideWarning => limit.Unit is "ppm" or "[ppm]" ? limit.Value : null,
        CombustibleGas or CombustibleGasWarning => limit.Unit is "%" or "%LEL" or "% LEL" ? limit.Value : null,
        Silent => limit.Unit switch { "s" => limit.Value, "min" => limit.Value * 60, "h" => limit.Value * 3600, _ => null },
        _ => null,
    };

    /// <summary>The same for a deadband, which is a difference.</summary>
    public static double? CanonicalDeadband(string kind, Limit deadband) =>
        kind == Overheat ? deadband.Kelvins : CanonicalLimit(kind, deadband);
}
