using HotShop.Monitor.Logbook;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>What passed a meter between two readings that people typed.</summary>
/// <param name="Amount">m³ as metered, or kWh of an electric meter; null where the two readings are not of one register.</param>
/// <param name="ReadingUncertainty">Standard uncertainty of the amount that comes from reading whole steps at both ends, in its unit.</param>
public sealed record TypedStretch(Instant From, Instant To, double? Amount, double ReadingUncertainty)
{
    /// <summary>Stretches between each two neighbours, in order.</summary>
    public static IReadOnlyList<TypedStretch> Of(IReadOnlyList<MeterReading> readings, ChannelPlan meter)
    {
        var stretches = new List<TypedStretch>();
        for (var i = 1; i < readings.Count; i++)
        {
            var (before, after) = (readings[i - 1], readings[i]);
            if (after.At <= before.At) continue;
            // A step read at each end, rectangular: half a step to each side (GUM, JCGM 100:2008, 4.3.7).
            var step = double.Hypot(before.Step * before.CanonicalPerUnit, after.Step * after.CanonicalPerUnit) / Math.Sqrt(12);
            stretches.Add(new TypedStretch(before.At, after.At, after.GainSince(before, meter), step));
        }
        return stretches;
    }
}
