using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Notifications;

enum MessageKind { Call, Held, Closing, Test }

/// <summary>A message as it waits in the store. The link is made when it is sent, so that no token lies in the store.</summary>
sealed record OutboxRow(
    long Id, MessageKind Kind, string Occurrence, int Step, string Person, string Outlet, int Priority, string Title, string Message, Instant CreatedAt, int Attempts)
{
    /// <summary>The same for every attempt to send this message, so that a receiver can tell a second copy.</summary>
    public string Key => $"{Occurrence}/{Step}/{Person}/{Outlet}";
}

/// <summary>Messages to be sent, as rows: written with their cause, read by the sender, never forgotten.</summary>
static class Outbox
{
    /// <summary>Adds a message once: the same occurrence, step, person and outlet a second time changes nothing.</summary>
    public static bool Add(
        WriteScope scope, MessageKind kind, string occurrence, int step, OutletAddress to, int priority, string reason, string title, string message) =>
        scope.Execute(
            "INSERT OR IGNORE INTO outbox (kind, occurrence, step, person, outlet, priority, reason, title, message, created_at) VALUES ($kind, $occurrence, $step, $person, $outlet, $priority, $reason, $title, $message, $now)",
            ("$kind", Word(kind)), ("$occurrence", occurrence), ("$step", step), ("$person", to.Person.Id), ("$outlet", to.Outlet), ("$priority", priority),
            ("$reason", reason), ("$title", title), ("$message", message), ("$now", scope.Now.ToMicroseconds())) == 1;

    /// <summary>A newer call takes the place of one that could not be sent yet: after an outage a phone rings once, not twelve times.</summary>
    public static void Replace(WriteScope scope, string occurrence, int before, OutletAddress to) =>
        scope.Execute(
            "UPDATE outbox SET state = 'replaced' WHERE state = 'pending' AND kind = 'call' AND occurrence = $occurrence AND step < $step AND person = $person AND outlet = $outlet",
            ("$occurrence", occurrence), ("$step", before), ("$person", to.Person.Id), ("$outlet", to.Outlet));

    /// <summary>Somebody has it: calls still waiting are not sent.</summary>
    public static void WithdrawCalls(WriteScope scope, string occurrence) =>
        scope.Execute("UPDATE outbox SET state = 'withdrawn' WHERE state = 'pending' AND kind = 'call' AND occurrence = $occurrence", ("$occurrence", occurrence));

    /// <summary>Person and outlet of every call that was sent or is about to be.</summary>
    public static IReadOnlyList<(string Person, string Outlet)> Told(SqliteConnection connection, string occurrence)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT DISTINCT person, outlet FROM outbox WHERE occurrence = $occurrence AND kind = 'call' AND state IN ('sent', 'pending') ORDER BY id";
        command.Parameters.AddWithValue("$occurrence", occurrence);
        using var row = command.ExecuteReader();
        var told = new List<(string, string)>();
        while (row.Read()) told.Add((row.GetString(0), row.GetString(1)));
        return told;
    }

    /// <summary>How many rounds of calls were sent.</summary>
    public static int Rounds(SqliteConnection connection, string occurrence)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(DISTINCT step) FROM outbox WHERE occurrence = $occurrence AND kind = 'call' AND state = 'sent'";
        command.Parameters.AddWithValue("$occurrence", occurrence);
        return (int)(long)command.ExecuteScalar()!;
    }

    /// <summary>What waits for one way to one phone, oldest first.</summary>
    public static IReadOnlyList<OutboxRow> Pending(SqliteConnection connection, string person, string outlet)
    {
        using var command = connection.CreateCommand();
        command.CommandText =
            "SELECT id, kind, occurrence, step, priority, title, message, created_at, attempts FROM outbox WHERE state = 'pending' AND person = $person AND outlet = $outlet ORDER BY id";
        command.Parameters.AddWithValue("$person", person);
        command.Parameters.AddWithValue("$outlet", outlet);
        using var row = command.ExecuteReader();
        var pending = new List<OutboxRow>();
        while (row.Read())
            pending.Add(new(row.GetInt64(0), Enum.Parse<MessageKind>(row.GetString(1), ignoreCase: true), row.GetString(2), row.GetInt32(3), person, outlet,
                row.GetInt32(4), row.GetString(5), row.GetString(6), row.GetInstant(7), row.GetInt32(8)));
        return pending;
    }

    /// <summary>Why the newest message that was tried on this way was refused; null where it was not.</summary>
    public static string? LastRefusal(SqliteConnection connection, string person, string outlet)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT iif(state = 'failed', last_error, NULL) FROM outbox WHERE person = $person AND outlet = $outlet AND attempts > 0 ORDER BY id DESC LIMIT 1";
        command.Parameters.AddWithValue("$person", person);
        command.Parameters.AddWithValue("$outlet", outlet);
        return command.ExecuteScalar() as string;
    }

    public static void Sent(WriteScope scope, long id, string proof) =>
        scope.Execute("UPDATE outbox SET state = 'sent', sent_at = $now, attempts = attempts + 1, last_error = NULL, proof = $proof WHERE id = $id",
            ("$id", id), ("$now", scope.Now.ToMicroseconds()), ("$proof", proof));

    public static void Failed(WriteScope scope, long id, string error, bool isForGood) =>
        scope.Execute("UPDATE outbox SET state = CASE WHEN $forGood AND state = 'pending' THEN 'failed' ELSE state END, attempts = attempts + 1, last_error = $error WHERE id = $id",
            ("$id", id), ("$error", error), ("$forGood", isForGood));

    /// <summary>Messages to people or ways that the configuration no longer has can never be sent: they are failed, with the reason.</summary>
    public static int FailUnknown(WriteScope scope, CallOrder order)
    {
        var known = order.Outlets.Select(o => (o.Person.Id, o.Outlet)).ToHashSet();
        var lost = new List<long>();
        using (var command = scope.Command("SELECT id, person, outlet FROM outbox WHERE state = 'pending'"))
        using (var row = command.ExecuteReader())
            while (row.Read())
                if (!known.Contains((row.GetString(1), row.GetString(2)))) lost.Add(row.GetInt64(0));
        foreach (var id in lost) Failed(scope, id, "the configuration no longer names this person or this way to a phone", isForGood: true);
        return lost.Count;
    }

    /// <summary>Takes away what is settled and old, in a chunk small enough not to hold up the readings.</summary>
    public static void Forget(WriteScope scope, Instant before)
    {
        scope.Execute("DELETE FROM outbox WHERE id IN (SELECT id FROM outbox WHERE created_at < $before AND state <> 'pending' ORDER BY id LIMIT 5000)", ("$before", before.ToMicroseconds()));
        scope.Execute("DELETE FROM call_story WHERE phase IN ('ended', 'quiet') AND since < $before AND NOT EXISTS (SELECT 1 FROM outbox WHERE outbox.occurrence = call_story.occurrence)", ("$before", before.ToMicroseconds()));
    }

    static string Word(MessageKind kind) => kind switch
    {
        MessageKind.Call => "call",
        MessageKind.Held => "held",
        MessageKind.Closing => "closing",
        _ => "test",
    };
}
