using HotShop.Monitor.Alarms;
using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Live;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>A derived value, as pages and MQTT get it.</summary>
/// <param name="Uncertainty">Half-width of the 95 % interval in the same unit.</param>
public sealed record DerivedValue(string Id, string Appliance, string Name, double Value, string Unit, Instant At, double? Uncertainty);

/// <summary>Once a minute of the service's clock: glass in the pots, energy of the hour and the day, and temperatures that are known to an interval, to the open pages and to MQTT.</summary>
sealed partial class DerivedLoop(StudioPlan plan, PotBook pots, FuelBook fuel, LatestReadings latest, IAlarmDesk alarms, LiveFeed live, MqttOut mqtt, TimeProvider clock, LoopPace pace, ILogger<DerivedLoop> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(Math.Max(60, pace.Period.TotalSeconds * 5)), clock);
        do
        {
            try
            {
                foreach (var value in Values(clock.GetUtcNow().ToInstant())) Send(value);
                // A broker that was restarted, or a service that was, knows the standing alarms again within a minute.
                foreach (var occurrence in alarms.Current) AlarmNews.Tell(mqtt, occurrence);
            }
            catch (Exception failure) when (failure is StoreException or Microsoft.Data.Sqlite.SqliteException)
            {
                PutOff(failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stopping));
    }

    internal IEnumerable<DerivedValue> Values(Instant now)
    {
        foreach (var appliance in plan.Appliances)
        {
            foreach (var channel in appliance.Channels)
                if (TemperatureInterval.Of(channel, plan, latest)?.Budget is { } budget && latest.QualityOf(channel, now) == Quality.Good)
                    yield return Value(appliance, channel.Name, budget.Value, channel.Quantity.CanonicalUnit(), latest.Of(channel)!.At, budget.HalfWidth95);
            if (pots.At(appliance.Id, now) is { } pot)
                yield return Value(appliance, "pot-mass", pot.State.MassKilograms, "kg", now, pot.State.HalfWidthKilograms);
            if (FuelSource.Of(appliance).Count == 0) continue;
            var hour = fuel.Between(appliance, now - Duration.FromHours(1), now, now);
            yield return Value(appliance, "energy-last-hour", hour.EnergyKilowattHours + hour.EstimatedKilowattHours, "kW.h", now, Half(hour));
            var day = fuel.Between(appliance, now.InZone(plan.Zone).Date.AtStartOfDayInZone(plan.Zone).ToInstant(), now, now);
            yield return Value(appliance, "energy-today", day.EnergyKilowattHours + day.EstimatedKilowattHours, "kW.h", now, Half(day));
        }
    }

    DerivedValue Value(AppliancePlan appliance, string name, double value, string unit, Instant at, double? uncertainty) =>
        new($"{plan.Site}/{appliance.Id}", appliance.Id, name, value, unit, at, uncertainty);

    static double Half(FuelUse use) => (use.Total.High95 - use.Total.Low95) / 2;

    void Send(DerivedValue value)
    {
        live.Publish(new LiveEvent("derived", $"{value.Appliance}/{value.Name}", value));
        mqtt.Value(value.Appliance, value.Name, value.Value, value.Unit, value.At, value.Uncertainty);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Derived values were not computed; the next minute tries again")]
    private partial void PutOff(Exception failure);
}

/// <summary>Tells MQTT of every change of an alarm, once it is stored. The pages hear of it from the alarms themselves.</summary>
/// <param name="mqtt">Made when first needed: the broker hands readings to the alarms, and the alarms hand news to the broker.</param>
sealed class AlarmNews(Lazy<MqttOut> mqtt) : ITransitionStage
{
    public void React(IReadOnlyList<AlarmTransition> transitions, WriteScope scope)
    {
        // Asked for here, not after the commit: nothing may fail there.
        var outward = mqtt.Value;
        scope.OnCommit(() =>
        {
            foreach (var transition in transitions) Tell(outward, transition.Occurrence);
        });
    }

    public static void Tell(MqttOut mqtt, AlarmOccurrence occurrence) =>
        mqtt.Alarm(occurrence.AlarmId, occurrence.State.NameOf(), occurrence.Priority, occurrence.Words.Sentence);
}
