using HotShop.Monitor.Live;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Keeps what happened to alarms, and tells: the stages within the same transaction, the open pages after its commit.</summary>
sealed class AlarmHistory(IStoreReader store, IEnumerable<ITransitionStage> stages, LiveFeed live)
{
    readonly IReadOnlyList<ITransitionStage> stages = [.. stages];

    public void Keep(IReadOnlyList<AlarmTransition> transitions, WriteScope scope)
    {
        if (transitions.Count == 0) return;
        foreach (var transition in transitions) OccurrenceRows.Write(transition, scope);
        foreach (var stage in stages) stage.React(transitions, scope);
        scope.OnCommit(() =>
        {
            foreach (var transition in transitions) live.Publish(new LiveEvent("alarm", transition.Occurrence.Id, AlarmItem.Of(transition.Occurrence)));
        });
    }

    public AlarmOccurrence? Find(string id)
    {
        using var connection = store.Open();
        return OccurrenceRows.Find(connection, id);
    }

    /// <summary>With what the transaction under way has written.</summary>
    public static AlarmOccurrence? Find(string id, WriteScope scope) => OccurrenceRows.Find(scope.Connection, id);

    public IReadOnlyList<AlarmOccurrence> Between(Instant from, Instant to)
    {
        using var connection = store.Open();
        return OccurrenceRows.Between(connection, from, to);
    }
}
