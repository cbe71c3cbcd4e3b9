using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Occurrences and what happened to them, as rows. Writing the same again changes nothing.</summary>
static class OccurrenceRows
{
    const string Select = """
        SELECT o.id, o.alarm, o.appliance, o.channel, o.kind, o.priority, o.since, o.value, o.limit_value, o.unit, o.sentence, o.consequence, o.first_step, o.caution,
               o.inhibited_by, a.at, a.who, c.at
        FROM alarm_occurrence o
        LEFT JOIN alarm_transition a ON a.occurrence = o.id AND a.change = 'acknowledged'
        LEFT JOIN alarm_transition c ON c.occurrence = o.id AND c.change = 'cleared'

        """;

    public static void Write(AlarmTransition transition, WriteScope scope)
    {
        var occurrence = transition.Occurrence;
        if (transition.Change == AlarmChange.Raised)
            scope.Execute("""
                INSERT INTO alarm_occurrence (id, alarm, appliance, channel, kind, priority, since, value, limit_value, unit, sentence, consequence, first_step, caution, inhibited_by)
                VALUES ($id, $alarm, $appliance, $channel, $kind, $priority, $since, $value, $limit, $unit, $sentence, $consequence, $first, $caution, $inhibited) ON CONFLICT (id) DO NOTHING
                """,
                ("$id", occurrence.Id), ("$alarm", occurrence.AlarmId), ("$appliance", occurrence.Appliance), ("$channel", occurrence.Channel), ("$kind", occurrence.Kind),
                ("$priority", occurrence.Priority), ("$since", occurrence.Since.ToMicroseconds()), ("$value", occurrence.Value), ("$limit", occurrence.Limit), ("$unit", occurrence.Unit),
                ("$sentence", occurrence.Words.Sentence), ("$consequence", occurrence.Words.Consequence), ("$first", occurrence.Words.FirstStep), ("$caution", occurrence.Words.Caution),
                ("$inhibited", occurrence.InhibitedBy));
        scope.Execute("""
            INSERT INTO alarm_transition (occurrence, change, at, written_at, state, who, value, limit_value)
            VALUES ($occurrence, $change, $at, $written, $state, $who, $value, $limit) ON CONFLICT (occurrence, change) DO NOTHING
            """,
            ("$occurrence", occurrence.Id), ("$change", NameOf(transition.Change)), ("$at", transition.At.ToMicroseconds()), ("$written", scope.Now.ToMicroseconds()),
            ("$state", occurrence.State.NameOf()), ("$who", transition.Who), ("$value", occurrence.Value), ("$limit", occurrence.Limit));
    }

    public static AlarmOccurrence? Find(SqliteConnection connection, string id) =>
        Read(connection, "WHERE o.id = $id", ("$id", id)).FirstOrDefault();

    /// <summary>Occurrences that held or waited at some time in [from, to), newest first.</summary>
    public static IReadOnlyList<AlarmOccurrence> Between(SqliteConnection connection, Instant from, Instant to) =>
        Read(connection, "WHERE o.since < $to AND (o.since >= $from OR c.at IS NULL OR c.at >= $from) ORDER BY o.since DESC, o.seq DESC",
            ("$from", from.ToMicroseconds()), ("$to", to.ToMicroseconds()));

    /// <summary>The last occurrence of each alarm, and whatever never ended.</summary>
    public static IReadOnlyList<AlarmOccurrence> Last(SqliteConnection connection) =>
        Read(connection, "WHERE o.seq IN (SELECT max(seq) FROM alarm_occurrence GROUP BY alarm) OR c.at IS NULL ORDER BY o.seq");

    static List<AlarmOccurrence> Read(SqliteConnection connection, string where, params ReadOnlySpan<(string Name, object Value)> parameters)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Select + where;
        foreach (var (name, value) in parameters) command.Parameters.AddWithValue(name, value);
        using var rows = command.ExecuteReader();
        var list = new List<AlarmOccurrence>();
        while (rows.Read()) list.Add(Read(rows));
        return list;
    }

    static AlarmOccurrence Read(SqliteDataReader row)
    {
        var (acknowledgedAt, clearedAt) = (row.GetInstantOrNull(15), row.GetInstantOrNull(17));
        var state = (acknowledgedAt is null, clearedAt is null) switch
        {
            (true, true) => AlarmState.Unacknowledged,
            (false, true) => AlarmState.Acknowledged,
            (true, false) => AlarmState.ReturnedUnacknowledged,
            _ => AlarmState.Normal,
        };
        return new AlarmOccurrence(row.GetString(0), row.GetString(1), row.GetString(2), row.GetTextOrNull(3), row.GetString(4), row.GetInt32(5), state, row.GetInstant(6),
            row.GetNumberOrNull(7), row.GetNumberOrNull(8), row.GetTextOrNull(9), new AlarmWords(row.GetString(10), row.GetString(11), row.GetString(12), row.GetString(13)),
            acknowledgedAt, row.GetTextOrNull(16), clearedAt) { InhibitedBy = row.GetTextOrNull(14) };
    }

    static string NameOf(AlarmChange change) => change switch
    {
        AlarmChange.Raised => "raised",
        AlarmChange.Acknowledged => "acknowledged",
        _ => "cleared",
    };
}
