using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>A message that would have gone to a person, with the alarm it is about.</summary>
sealed record Call(Instant At, string Person, string Occurrence, string Title, string Sentence);

/// <summary>An alarm that held, whether it called or was only shown.</summary>
sealed record Held(string Alarm, Instant Since, int Priority, string? InhibitedBy, string Sentence);

/// <summary>Reads what the alarms and the outbox have come to.</summary>
static class CallBook
{
    public static IReadOnlyList<Call> Calls(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT o.created_at, o.person, o.occurrence, o.title, s.sentence FROM outbox o JOIN call_story s USING (occurrence) WHERE o.kind = 'call' ORDER BY o.id";
        using var rows = command.ExecuteReader();
        var calls = new List<Call>();
        while (rows.Read()) calls.Add(new(rows.GetInstant(0), rows.GetString(1), rows.GetString(2), rows.GetString(3), rows.GetString(4)));
        return calls;
    }

    public static IReadOnlyList<Held> Alarms(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT alarm, since, priority, inhibited_by, sentence FROM alarm_occurrence ORDER BY seq";
        using var rows = command.ExecuteReader();
        var alarms = new List<Held>();
        while (rows.Read()) alarms.Add(new(rows.GetString(0), rows.GetInstant(1), rows.GetInt32(2), rows.GetTextOrNull(3), rows.GetString(4)));
        return alarms;
    }
}
