using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <summary>A message that goes the whole way of an alarm's, so that a tap on its link proves the whole way.</summary>
sealed class TestCalls(StudioPlan plan, CallOrder order, OutboxBell bell, NightLinks links, IStoreWriter writer, TimeProvider time)
{
    /// <returns>Id of the test; null where there is no such person or outlet.</returns>
    public async Task<string?> Send(string person, string outlet, CancellationToken stop)
    {
        if (order.Find(person, outlet) is not { } to) return null;
        return await writer.Write(scope =>
        {
            var id = $"test-{Guid.CreateVersion7():n}";
            var text = $"#1 This is a test from {plan.Configuration.Name}, sent {MessageText.At(scope.Now, plan.Zone)}. Nothing is wrong. Tap the link and the button to show that it reached you.";
            Outbox.Add(scope, MessageKind.Test, id, 1, to, 3, "Test", $"Test call: {plan.Configuration.Name}", text);
            scope.OnCommit(bell.Ring);
            return id;
        }, stop);
    }

    public LinkClaim? Look(string test, string? token) =>
        links.Verify(token, time.GetUtcNow().ToInstant()) is { IsTest: true } claim && claim.Occurrence == test ? claim : null;

    /// <returns>False for a link that is unknown or has expired.</returns>
    public async Task<bool> Confirm(string test, string? token, CancellationToken stop)
    {
        if (Look(test, token) is not { } claim) return false;
        await writer.Write(scope => Receipts.Record(scope, claim), stop);
        return true;
    }
}
