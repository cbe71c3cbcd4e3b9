using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Simulator.Tests;

/// <summary>Studios for tests. The start is a Tuesday morning, 8:00 in Berlin.</summary>
internal static class Run
{
    public static readonly Instant Tuesday = Instant.FromUtc(2026, 3, 3, 7, 0);

    public static SimulationOptions Options(int seed = 1, int sampleSeconds = 10, params FaultOrder[] faults) =>
        new() { Seed = seed, Start = Tuesday, SampleSeconds = sampleSeconds, Faults = faults };

    public static SimulatedStudio Studio(int seed = 1, params FaultOrder[] faults) => new(Options(seed, 10, faults));

    public static Instant At(double hours) => Tuesday + Duration.FromSeconds(hours * 3600);

    public static FaultOrder Fault(FaultKind kind, string appliance, double afterHours, double hours) =>
        new(kind, appliance, Duration.FromHours(afterHours), Duration.FromHours(hours));
}
