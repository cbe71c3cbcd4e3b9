using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <summary>
/// When nothing can be stored no alarm can be raised, and no message reaches the outbox. That itself must reach a phone: here alone a message
/// goes out unstored, and says so. Nobody can answer it for the same reason, so it repeats, less often than others, until the store is back.
/// </summary>
sealed partial class UnstoredCall(
    StudioPlan plan, CallOrder order, OutletsByKind outlets, HealthBoard board, TickPulse pulse, TimeProvider wallClock, ILogger<UnstoredCall> log) : BackgroundService
{
    /// <summary>A commit may fail once and the next go through; and the alarms' own service trouble comes first where it still can.</summary>
    public static readonly Duration Patience = Duration.FromMinutes(1);

    static readonly TimeSpan look = TimeSpan.FromSeconds(10), longestSilence = TimeSpan.FromMinutes(1);
    readonly CallSettings settings = order.Settings with { RepeatAfter = order.Settings.RepeatAfter * 3 };
    Instant? brokenSince;
    CallStory? story;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var tick = new PeriodicTimer(look, wallClock);
        try
        {
            while (await tick.WaitForNextTickAsync(stoppingToken)) await Look(stoppingToken);
        }
        catch (OperationCanceledException) { }
    }

    internal async Task Look(CancellationToken stop)
    {
        var now = wallClock.GetUtcNow().ToInstant();
        if (Problem() is { } problem)
        {
            brokenSince ??= now;
            if (now - brokenSince < Patience) return;
            await Call(problem, now, stop);
        }
        else
        {
            brokenSince = null;
            if (story is { } ended) await Mended(ended, stop);
            story = null;
        }
    }

    string? Problem() =>
        board.Of(HealthBoard.Store) is { IsWorking: false } store ? store.Detail
        : pulse.Age > longestSilence ? $"no turn of the loop for {MessageText.Span(Duration.FromTimeSpan(pulse.Age))}"
        : null;

    async Task Call(string problem, Instant now, CancellationToken stop)
    {
        var decision = story is null ? CallPlan.Raised($"unstored~{now.ToUnixTimeSeconds()}", 1, isPartOfATrouble: false, now, settings) : CallPlan.Waited(story, now, settings);
        story = decision.Story;
        if (decision.Calls.Count == 0) return;
        Calling(problem, decision.Story.Step);
        var text = MessageText.Unstored(problem, decision.Story.Step, MessageText.At(brokenSince!.Value, plan.Zone));
        await Task.WhenAll(decision.Calls.Select(c => Send(order.InOrder[c.Place], MessageKind.Call, decision.Story, $"Priority 1: {plan.Configuration.Name}, no alarm can be raised", text, stop)));
    }

    Task Mended(CallStory ended, CancellationToken stop)
    {
        var after = ended with { Step = ended.Step + 1 };
        var text = $"#{after.Step} The monitor stores readings again, so alarms can be raised again. What happened meanwhile it may not know: look at the fires.";
        return Task.WhenAll(order.InOrder.Take(ended.Reached).Select(p => Send(p, MessageKind.Closing, after, $"Ended: {plan.Configuration.Name}, no alarm could be raised", text, stop)));
    }

    Task Send(PersonOptions person, MessageKind kind, CallStory about, string title, string text, CancellationToken stop) =>
        Task.WhenAll(CallOrder.OutletsOf(person).Select(async to =>
        {
            if (outlets.For(to) is not { } outlet) return;
            var message = new OutgoingMessage($"{about.Occurrence}/{about.Step}/{person.Id}/{to.Outlet}", kind, about.Occurrence, about.Step, 1, title, text, new Uri(outlets.Pages, "health"));
            if (await outlet.Send(to, message, stop) is not SendResult.Accepted) NotSent(person.Id, to.Outlet);
        }));

    [LoggerMessage(Level = LogLevel.Error, Message = "Nothing can be stored ({Problem}); calling without the outbox, round {Step}")]
    partial void Calling(string problem, int step);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The unstored call did not reach {Person} by {Outlet}; the next round tries again")]
    partial void NotSent(string person, string outlet);
}
