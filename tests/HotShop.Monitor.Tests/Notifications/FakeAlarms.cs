using HotShop.Monitor.Alarms;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>Alarms to order: what happens to them reaches the stage in the transaction, as in the service.</summary>
sealed class FakeAlarms(IStoreWriter writer) : IAlarmDesk
{
    readonly Dictionary<string, AlarmOccurrence> occurrences = [];

    public ITransitionStage? Stage { get; set; }

    public IReadOnlyList<AlarmOccurrence> Current => [.. occurrences.Values.Where(o => o.State != AlarmState.Normal).OrderBy(o => o.Priority)];

    public static AlarmOccurrence Overheat(Instant since, int priority = 1, string id = "furnace-1.overheat.crown-1") => new(
        id, "furnace-1.overheat.crown", "furnace-1", "crown", "overheat", priority, AlarmState.Unacknowledged, since, 1302, 1290, "Cel",
        new("Furnace 1 crown is 1302 °C (2376 °F), limit 1290 °C (2354 °F)", "The crown brick softens within hours.",
            "Look at the burner from outside and turn the controller down.", "Smell gas? Touch no switch, get out, call from outside. Only trained people relight."),
        null, null, null);

    public Task Raise(AlarmOccurrence occurrence) => writer.Write(scope => Raise(occurrence, scope));

    public void Raise(AlarmOccurrence occurrence, WriteScope scope)
    {
        occurrences[occurrence.Id] = occurrence;
        Stage!.React([new(occurrence, AlarmChange.Raised, scope.Now, null)], scope);
    }

    public Task Clear(string id) => writer.Write(scope =>
    {
        var before = occurrences[id];
        var after = occurrences[id] = before with
        {
            State = before.State == AlarmState.Acknowledged ? AlarmState.Normal : AlarmState.ReturnedUnacknowledged, ClearedAt = scope.Now,
        };
        Stage!.React([new(after, AlarmChange.Cleared, scope.Now, null)], scope);
    });

    public Task Take(string id, string who) => Acknowledge(id, who, CancellationToken.None);

    public async Task<AlarmOccurrence?> Acknowledge(string occurrenceId, string who, CancellationToken stop) =>
        await writer.Write(scope => Acknowledge(occurrenceId, who, scope), stop);

    public AlarmOccurrence? Acknowledge(string occurrenceId, string who, WriteScope scope)
    {
        if (!occurrences.TryGetValue(occurrenceId, out var before)) return null;
        if (before.State is not (AlarmState.Unacknowledged or AlarmState.ReturnedUnacknowledged)) return before;
        var after = occurrences[occurrenceId] = before with
        {
            State = before.State == AlarmState.Unacknowledged ? AlarmState.Acknowledged : AlarmState.Normal, AcknowledgedAt = scope.Now, AcknowledgedBy = who,
        };
        Stage!.React([new(after, AlarmChange.Acknowledged, scope.Now, who)], scope);
        return after;
    }

    public AlarmOccurrence? Find(string occurrenceId) => occurrences.GetValueOrDefault(occurrenceId);

    public IReadOnlyList<AlarmOccurrence> History(Instant from, Instant to) => [.. occurrences.Values.Where(o => o.Since >= from && o.Since < to)];
}
