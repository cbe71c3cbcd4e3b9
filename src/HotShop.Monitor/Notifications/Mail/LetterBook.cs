using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Notifications.Mail;

/// <param name="At">Of the last attempt.</param>
/// <param name="Note">What the mail server answered, or why nothing was sent.</param>
sealed record LetterState(string Key, string Person, string State, int Attempts, Instant At, string Note)
{
    /// <summary>Nothing more will be done about it: it was sent, refused for good, or skipped with a reason.</summary>
    public bool IsSettled => State != "waiting";
}

/// <summary>Who had which letter, as rows: a restart sends none a second time.</summary>
static class LetterBook
{
    /// <summary>Letters whose key begins so, newest attempt last.</summary>
    public static IReadOnlyList<LetterState> Of(SqliteConnection connection, string keyBegins)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT key, person, state, attempts, at, note FROM letter WHERE substr(key, 1, length($begins)) = $begins ORDER BY at, key, person";
        command.Parameters.AddWithValue("$begins", keyBegins);
        using var row = command.ExecuteReader();
        var list = new List<LetterState>();
        while (row.Read()) list.Add(new(row.GetString(0), row.GetString(1), row.GetString(2), row.GetInt32(3), row.GetInstant(4), row.GetString(5)));
        return list;
    }

    /// <summary>Notes one attempt. What is settled stays settled.</summary>
    public static void Note(WriteScope scope, string key, string person, string state, string note) =>
        scope.Execute(
            "INSERT INTO letter (key, person, state, attempts, at, note) VALUES ($key, $person, $state, 1, $now, $note) ON CONFLICT (key, person) DO UPDATE SET state = excluded.state, attempts = attempts + 1, at = excluded.at, note = excluded.note WHERE letter.state = 'waiting'",
            ("$key", key), ("$person", person), ("$state", state), ("$now", scope.Now.ToMicroseconds()), ("$note", note));
}
