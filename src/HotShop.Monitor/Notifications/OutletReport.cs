using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>One way to one phone, and what proves that it works. Times RFC 3339.</summary>
/// <param name="LastSentAt">When a receiver last took a message: no proof that a phone rang.</param>
/// <param name="LastReceiptAt">When the person last tapped a link that came this way: the proof.</param>
/// <param name="IsProven">A tap within the last 8 days.</param>
/// <param name="Waiting">Messages not sent yet.</param>
public sealed record OutletStatus(
    string Person, string Name, string Outlet, string Kind, DateTimeOffset? LastSentAt, DateTimeOffset? LastReceiptAt, bool IsProven, int Waiting, string? LastError);

/// <summary>What is known of every way to every phone.</summary>
sealed class OutletReport(CallOrder order, IStoreReader reader)
{
    /// <summary>A week between tests, and a day of grace.</summary>
    public static readonly Duration ProofLasts = Duration.FromDays(8);

    public IReadOnlyList<OutletStatus> All(Instant now)
    {
        using var connection = reader.Open();
        var statuses = new List<OutletStatus>();
        foreach (var to in order.Outlets)
        {
            using var command = connection.CreateCommand();
            command.CommandText = """
                SELECT max(sent_at), sum(state = 'pending'),
                       (SELECT last_error FROM outbox WHERE person = $person AND outlet = $outlet AND attempts > 0 ORDER BY id DESC LIMIT 1)
                FROM outbox WHERE person = $person AND outlet = $outlet
                """;
            command.Parameters.AddWithValue("$person", to.Person.Id);
            command.Parameters.AddWithValue("$outlet", to.Outlet);
            using var row = command.ExecuteReader();
            row.Read();
            var receipt = Receipts.Last(connection, to.Person.Id, to.Outlet);
            statuses.Add(new(to.Person.Id, to.Person.Name, to.Outlet, to.Options.Kind, row.GetInstantOrNull(0)?.ToDateTimeOffset(), receipt?.ToDateTimeOffset(),
                receipt is { } at && now - at < ProofLasts, row.IsDBNull(1) ? 0 : row.GetInt32(1), row.GetTextOrNull(2)));
        }
        return statuses;
    }
}
