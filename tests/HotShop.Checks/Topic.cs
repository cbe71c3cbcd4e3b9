namespace HotShop.Checks;

/// <summary>The checks of one subject, in the order in which the table shows them.</summary>
public sealed record Topic(string Name, IReadOnlyList<Check> Checks)
{
    /// <summary>Every subject of the library.</summary>
    public static IReadOnlyList<Topic> All { get; } =
    [
        new("Thermometry", [.. ThermometryChecks.All]),
        new("Fuel gas", [.. FuelGasChecks.All]),
        new("Billing and meters", [.. BillingChecks.All]),
        new("Combustion", [.. CombustionChecks.All]),
        new("Glass", [.. GlassChecks.All]),
        new("Pot", [.. PotChecks.All]),
        new("Furnace heat", [.. FurnaceHeatChecks.All]),
        new("Uncertainty", [.. UncertaintyChecks.All]),
        new("Statistics", [.. StatisticsChecks.All]),
    ];
}
