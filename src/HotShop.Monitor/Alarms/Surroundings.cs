using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>What alarms depend on beside readings: modes, typed curves, the health of the service. Told as events when it has changed.</summary>
sealed class Surroundings(StudioPlan plan, IModes modes, IAnnealingCurves curves, HealthBoard health)
{
    public IEnumerable<AlarmEvent> News(StudioMemory memory, Instant now)
    {
        foreach (var part in health.Parts)
            if (!memory.Parts.TryGetValue(part.Part, out var before) || before != part) yield return new AlarmEvent.PartReported(part);
        foreach (var appliance in plan.Appliances)
        {
            var curve = curves.For(appliance.Id, now);
            if (!ReferenceEquals(curve, memory.Curves.GetValueOrDefault(appliance.Id))) yield return new AlarmEvent.CurveSet(appliance.Id, curve);
            var mode = modes.Of(appliance.Id);
            if (!memory.Modes.TryGetValue(appliance.Id, out var before) || before != mode) yield return new AlarmEvent.ModeSet(appliance.Id, mode, now);
        }
    }
}
