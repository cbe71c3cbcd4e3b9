using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Simulator;

/// <summary>What a simulation is made from. The same options give the same messages.</summary>
public sealed record SimulationOptions
{
    /// <summary>Chooses people, noise and the hidden parameters of the plant.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>When the simulated studio begins.</summary>
    public required Instant Start { get; init; }

    /// <summary>Where the crew's clock hangs. Default Europe/Berlin.</summary>
    public DateTimeZone Zone { get; init; } = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    /// <summary>
    /// How often temperatures, flows and powers are sent, in s, 2 to 3600. Default 10; states go on change and every 60 s.
    /// </summary>
    public int SampleSeconds { get; init; } = 10;

    /// <summary>
    /// Also reckons what the furnace would burn if it were only held; costs a quarter more time. Default no.
    /// </summary>
    public bool WithHoldingTwin { get; init; }

    public IReadOnlyList<FaultOrder> Faults { get; init; } = [];
}
