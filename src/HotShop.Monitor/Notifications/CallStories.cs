using HotShop.Monitor.Alarms;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>What the messages of an occurrence need to know of its alarm, as it was when raised.</summary>
sealed record AlarmSnapshot(string Appliance, string? Channel, string Kind, Instant Since, string Sentence, string FirstStep, string Caution)
{
    public static AlarmSnapshot Of(AlarmOccurrence alarm) =>
        new(alarm.Appliance, alarm.Channel, alarm.Kind, alarm.Since, alarm.Words.Sentence, alarm.Words.FirstStep, alarm.Words.Caution);
}

sealed record StoredStory(CallStory Story, AlarmSnapshot Alarm, CallReason Reason, Instant? NextAt, string? HeldBy);

/// <summary>The stories as rows. The rows are the only state: what is rolled back never was, what is committed survives a restart.</summary>
static class CallStories
{
    const string Fields =
        "occurrence, phase, reason, priority, step, reached, reached_at, last_round_at, next_at, held_by, appliance, channel, kind, since, sentence, first_step, caution";

    /// <returns>False where the occurrence is known already.</returns>
    public static bool Begin(WriteScope scope, CallDecision decision, AlarmSnapshot alarm)
    {
        var story = decision.Story;
        return scope.Execute(
            $"INSERT OR IGNORE INTO call_story ({Fields}) VALUES ($occurrence, $phase, $reason, $priority, $step, $reached, $reachedAt, $lastRoundAt, $nextAt, NULL, $appliance, $channel, $kind, $since, $sentence, $firstStep, $caution)",
            ("$occurrence", story.Occurrence), ("$phase", Word(story.Phase)), ("$reason", decision.Reason.ToString()), ("$priority", story.Priority),
            ("$step", story.Step), ("$reached", story.Reached), ("$reachedAt", story.ReachedAt.ToMicroseconds()), ("$lastRoundAt", story.LastRoundAt.ToMicroseconds()),
            ("$nextAt", decision.NextAt?.ToMicroseconds()), ("$appliance", alarm.Appliance), ("$channel", alarm.Channel), ("$kind", alarm.Kind),
            ("$since", alarm.Since.ToMicroseconds()), ("$sentence", alarm.Sentence), ("$firstStep", alarm.FirstStep), ("$caution", alarm.Caution)) == 1;
    }

    public static void Update(WriteScope scope, CallDecision decision, string? heldBy = null)
    {
        var story = decision.Story;
        scope.Execute(
            "UPDATE call_story SET phase = $phase, reason = $reason, step = $step, reached = $reached, reached_at = $reachedAt, last_round_at = $lastRoundAt, next_at = $nextAt, held_by = coalesce($heldBy, held_by) WHERE occurrence = $occurrence",
            ("$occurrence", story.Occurrence), ("$phase", Word(story.Phase)), ("$reason", decision.Reason.ToString()), ("$step", story.Step), ("$reached", story.Reached),
            ("$reachedAt", story.ReachedAt.ToMicroseconds()), ("$lastRoundAt", story.LastRoundAt.ToMicroseconds()), ("$nextAt", decision.NextAt?.ToMicroseconds()), ("$heldBy", heldBy));
    }

    public static StoredStory? Find(SqliteConnection connection, string occurrence)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {Fields} FROM call_story WHERE occurrence = $occurrence";
        command.Parameters.AddWithValue("$occurrence", occurrence);
        using var row = command.ExecuteReader();
        return row.Read() ? Read(row) : null;
    }

    /// <summary>Stories with something due. A deadline further ahead than any can be was stored before the clock was set back, and is due too.</summary>
    public static IReadOnlyList<StoredStory> Due(WriteScope scope, CallSettings settings)
    {
        using var command = scope.Command(
            $"SELECT {Fields} FROM call_story WHERE next_at <= $now OR next_at > $latest ORDER BY priority, since",
            ("$now", scope.Now.ToMicroseconds()), ("$latest", (scope.Now + settings.Longest).ToMicroseconds()));
        using var row = command.ExecuteReader();
        var due = new List<StoredStory>();
        while (row.Read()) due.Add(Read(row));
        return due;
    }

    static string Word(CallPhase phase) => phase switch
    {
        CallPhase.Calling => "calling",
        CallPhase.Held => "held",
        CallPhase.Ended => "ended",
        _ => "quiet",
    };

    static StoredStory Read(SqliteDataReader row) => new(
        new(row.GetString(0), row.GetInt32(3), Enum.Parse<CallPhase>(row.GetString(1), ignoreCase: true), row.GetInt32(4), row.GetInt32(5), row.GetInstant(6), row.GetInstant(7)),
        new(row.GetString(10), row.GetTextOrNull(11), row.GetString(12), row.GetInstant(13), row.GetString(14), row.GetString(15), row.GetString(16)),
        Enum.Parse<CallReason>(row.GetString(2)), row.GetInstantOrNull(8), row.GetTextOrNull(9));
}
