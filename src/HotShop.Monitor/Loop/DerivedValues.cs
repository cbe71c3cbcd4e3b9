using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>A derived value, as pages and MQTT get it.</summary>
/// <param name="ValueLow95">Lower end of the 95 % interval.</param>
/// <param name="Uncertainty">Half-width of that interval, in the same unit, before it is cut off at nothing.</param>
public sealed record DerivedValue(string Id, string Appliance, string Name, double Value, double ValueLow95, double ValueHigh95, string Unit, Instant At, double Uncertainty);

/// <summary>Glass in the pots, energy of the last hour and of the day, and temperatures that are known to an interval.</summary>
sealed class DerivedValues(StudioPlan plan, PotBook pots, FuelBook fuel, LatestReadings latest)
{
    public IEnumerable<DerivedValue> At(Instant now)
    {
        foreach (var appliance in plan.Appliances)
        {
            foreach (var channel in appliance.Channels)
                if (TemperatureInterval.Of(channel, plan, latest)?.Budget is { } budget && latest.QualityOf(channel, now) == Quality.Good)
                    yield return Value(appliance, channel.Name, budget.Value, budget.Low95, budget.High95, budget.HalfWidth95, channel.Quantity.CanonicalUnit(), latest.Of(channel)!.At);
            if (pots.At(appliance.Id, now) is { } pot)
                yield return Value(appliance, "pot-mass", pot.State.MassKilograms, pot.State.MassKilogramsLow95, pot.State.MassKilogramsHigh95, pot.State.HalfWidthKilograms, "kg", now);
            if (FuelSource.Of(appliance).Count == 0) continue;
            var hour = fuel.Between(appliance, now - Duration.FromHours(1), now, now);
            yield return Value(appliance, "energy-last-hour", hour, now);
            var day = fuel.Between(appliance, now.InZone(plan.Zone).Date.AtStartOfDayInZone(plan.Zone).ToInstant(), now, now);
            yield return Value(appliance, "energy-today", day, now);
        }
    }

    DerivedValue Value(AppliancePlan appliance, string name, double value, double low, double high, double uncertainty, string unit, Instant at) =>
        new($"{plan.Site}/{appliance.Id}", appliance.Id, name, value, low, high, unit, at, uncertainty);

    /// <summary>The value is what is known to have been used; its interval reaches over what nobody measured.</summary>
    DerivedValue Value(AppliancePlan appliance, string name, FuelUse use, Instant at) =>
        Value(appliance, name, use.EnergyKilowattHours + use.EstimatedKilowattHours, Math.Max(0, use.Total.Low95), use.Total.High95, use.Total.HalfWidth95, "kW.h", at);
}
