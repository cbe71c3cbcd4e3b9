using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Readings;

/// <summary>A message, or a row of one, that became no value.</summary>
public sealed record RefusedMessage(NodaTime.Instant At, string Topic, string Reason, string Sample, string? Sender);

/// <summary>Keeps what was refused with its reason: the last thousand, and a count of all.</summary>
static class RefusedList
{
    public static void Add(IncomingMessage message, string reason, WriteScope scope)
    {
        scope.Count(Counters.Refused);
        scope.Execute("INSERT INTO refused (at, topic, reason, sample, sender) VALUES ($at, $topic, $reason, $sample, $sender)",
            ("$at", message.ArrivedAt.ToMicroseconds()), ("$topic", Cut(message.Topic, 300)), ("$reason", Cut(reason, 500)), ("$sample", Printable.Beginning(message.Payload)), ("$sender", message.Sender));
        scope.Execute("DELETE FROM refused WHERE id <= (SELECT max(id) FROM refused) - 1000");
    }

    public static IReadOnlyList<RefusedMessage> Newest(IStoreReader store, int most)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT at, topic, reason, sample, sender FROM refused ORDER BY id DESC LIMIT $most";
        command.Parameters.AddWithValue("$most", most);
        using var rows = command.ExecuteReader();
        var list = new List<RefusedMessage>();
        while (rows.Read()) list.Add(new(rows.GetInstant(0), rows.GetString(1), rows.GetString(2), rows.GetString(3), rows.GetTextOrNull(4)));
        return list;
    }

    static string Cut(string text, int most) => text.Length <= most ? text : text[..most] + "…";
}
