using HotShop.Monitor.Store;

namespace HotShop.Monitor.Notifications;

/// <summary>Who was called about an occurrence.</summary>
/// <param name="Called">Names, in the order they were called.</param>
/// <param name="Rounds">How many times messages went out.</param>
sealed record CallTally(IReadOnlyList<string> Called, int Rounds);

/// <summary>What the outbox still knows of the calls about an alarm.</summary>
sealed class CallReport(CallOrder order, IStoreReader store)
{
    public CallTally Of(string occurrence)
    {
        using var connection = store.Open();
        var called = Outbox.Told(connection, occurrence).Select(t => t.Person).Distinct(StringComparer.Ordinal).Select(id => order.Find(id)?.Name ?? id).ToList();
        return new(called, Outbox.Rounds(connection, occurrence));
    }
}
