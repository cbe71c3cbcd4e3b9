using HotShop.Simulator;
using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Evaluation;

/// <summary>When a simulated studio starts, and how it is made.</summary>
static class Days
{
    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    /// <summary>Eight in the morning of a working day, another one for each seed; thirty days from there meet the change to summer time.</summary>
    public static Instant StartOf(int seed)
    {
        var tuesday = new LocalDate(2026, 3, 3);
        return tuesday.PlusDays((seed % 5 + 5) % 5).At(new LocalTime(8, 0)).InZoneLeniently(Zone).ToInstant();
    }

    public static SimulatedStudio Studio(int seed, int sampleSeconds, IReadOnlyList<FaultOrder>? faults = null) =>
        new(new SimulationOptions { Seed = seed, Start = StartOf(seed), Zone = Zone, SampleSeconds = sampleSeconds, Faults = faults ?? [] });
}
