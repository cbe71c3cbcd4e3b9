using HotShop.Monitor.Alarms;
using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel.Flue;
using HotShop.Monitor.Live;
using HotShop.Monitor.Store;
using HotShop.Physics.Uncertainty;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Loop;

/// <summary>Once a minute of the service's clock: glass in the pots, energy of the hour and the day, and temperatures that are known to an interval, and fires whose flues are measured, to the open pages and to MQTT.</summary>
sealed partial class DerivedLoop(StudioPlan plan, DerivedValues values, FlueBook flues, IAlarmDesk alarms, LiveFeed live, MqttOut mqtt, TimeProvider clock, LoopPace pace, ILogger<DerivedLoop> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(Math.Max(60, pace.Period.TotalSeconds * 5)), clock);
        do
        {
            try
            {
                var now = clock.GetUtcNow().ToInstant();
                foreach (var value in values.At(now)) Send(value);
                foreach (var (appliance, name, percent) in Fires(now))
                    if (percent is not null) Send(new DerivedValue($"{plan.Site}/{appliance.Id}", appliance.Id, name, percent.Value, Math.Max(0, percent.Low95), percent.High95, "%", now, percent.HalfWidth95));
                    // The broker keeps the last value: one of a fire that is out must not stand for it.
                    else mqtt.Value(appliance.Id, name, null, "%", now);
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

    /// <summary>Of the fires whose flues are measured; null where they tell nothing now.</summary>
    internal IEnumerable<(AppliancePlan Appliance, string Name, Budget? Percent)> Fires(Instant now) =>
        from appliance in flues.Appliances
        let report = flues.At(appliance, now)
        from figure in new[] { ("excess-air", report.ExcessAir), ("available-heat", report.AvailableHeat) }
        where figure.Item2 is not null || figure.Item1 == "excess-air" || appliance.Options.Flue?.Temperature is not null
        select (appliance, figure.Item1, figure.Item2?.Times(100));

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
