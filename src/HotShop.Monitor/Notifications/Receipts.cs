using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>Taps on links: proof that a message came through by this way and was seen by a person.</summary>
static class Receipts
{
    /// <returns>False where this tap was noted before.</returns>
    public static bool Record(WriteScope scope, LinkClaim claim) => scope.Execute(
        "INSERT OR IGNORE INTO outlet_receipt (person, outlet, occurrence, at) VALUES ($person, $outlet, $occurrence, $now)",
        ("$person", claim.Person), ("$outlet", claim.Outlet), ("$occurrence", claim.Occurrence), ("$now", scope.Now.ToMicroseconds())) == 1;

    public static Instant? Last(SqliteConnection connection, string person, string outlet)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT max(at) FROM outlet_receipt WHERE person = $person AND outlet = $outlet";
        command.Parameters.AddWithValue("$person", person);
        command.Parameters.AddWithValue("$outlet", outlet);
        return command.ExecuteScalar() is long at ? Columns.FromMicroseconds(at) : null;
    }
}
