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

/// <summary>Once a minute of the service's clock: glass in the pots, energy of the hour and the day, and temperatures that are known to an interval, to the open pages and to MQTT.</summary>
sealed partial class DerivedLoop(DerivedValues values, IAlarmDesk alarms, LiveFeed live, MqttOut mqtt, TimeProvider clock, LoopPace pace, ILogger<DerivedLoop> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(Math.Max(60, pace.Period.TotalSeconds * 5)), clock);
        do
        {
            try
            {
                foreach (var value in values.At(clock.GetUtcNow().ToInstant())) Send(value);
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
