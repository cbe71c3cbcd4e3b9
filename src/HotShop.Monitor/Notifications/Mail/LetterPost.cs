using System.Collections.Concurrent;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Notifications.Mail;

/// <summary>One way a letter leaves. Failing is a result, never an exception; only cancellation passes through.</summary>
interface ILetterOutlet
{
    Task<SendResult> Send(OutletAddress to, Letter letter, CancellationToken stop);
}

/// <param name="Waiting">Why people still wait for it, by person id; empty when it is settled for all.</param>
sealed record Delivery(IReadOnlyList<string> Sent, IReadOnlyList<string> Refused, IReadOnlyDictionary<string, string> Waiting)
{
    public bool IsSettled => Waiting.Count == 0;
}

/// <summary>
/// Delivers letters to people's mail addresses, each letter once to each person. What was sent is a row before the next person's turn; a crash between the mail server's
/// answer and the row sends the same mail with the same message id again, which mailboxes drop. When to call it, and whether to try again, is the caller's.
/// </summary>
sealed partial class LetterPost(ILetterOutlet? mail, StudioPlan plan, IStoreWriter writer, IStoreReader reader, ILogger<LetterPost> log)
{
    /// <summary>Sent, but the store could not note it yet: not to be sent again by this process.</summary>
    readonly ConcurrentDictionary<(string Key, string Person), string> unrecorded = [];

    /// <summary>Who of these people has the letter of this key still to come: neither sent, nor refused, nor skipped.</summary>
    public IReadOnlyList<string> Missing(string key, IEnumerable<string> people)
    {
        using var connection = reader.Open();
        var settled = LetterBook.Of(connection, key).Where(l => l.Key == key && l.IsSettled).Select(l => l.Person).ToHashSet(StringComparer.Ordinal);
        return [.. people.Where(p => !settled.Contains(p)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Letters whose key begins so and what became of them.</summary>
    public IReadOnlyList<LetterState> History(string keyBegins)
    {
        using var connection = reader.Open();
        return LetterBook.Of(connection, keyBegins);
    }

    /// <param name="people">Ids; whoever has it already gets nothing.</param>
    /// <param name="write">Called once, and only if somebody misses the letter.</param>
    public async Task<Delivery> Deliver(string key, IEnumerable<string> people, Func<Letter> write, CancellationToken stop)
    {
        var (sent, refused, waiting) = (new List<string>(), new List<string>(), new Dictionary<string, string>(StringComparer.Ordinal));
        Letter? letter = null;
        foreach (var person in Missing(key, people))
        {
            var result = unrecorded.TryGetValue((key, person), out var proof) ? new SendResult.Accepted(proof)
                : AddressOf(person) is not { } to ? new SendResult.Refused("the configuration names no mail address of this person")
                : mail is null ? new SendResult.Refused("no mail server is configured")
                : await mail.Send(to, letter ??= write(), stop);
            switch (result)
            {
                case SendResult.Accepted accepted:
                    unrecorded[(key, person)] = accepted.Proof;
                    await writer.Write(scope => { LetterBook.Note(scope, key, person, "sent", accepted.Proof); }, stop);
                    unrecorded.TryRemove((key, person), out _);
                    sent.Add(person);
                    Delivered(key, person);
                    break;
                case SendResult.Refused refusal:
                    await writer.Write(scope => { LetterBook.Note(scope, key, person, "refused", refusal.Why); }, stop);
                    refused.Add(person);
                    RefusedForGood(key, person, refusal.Why);
                    break;
                case SendResult.TryAgain later:
                    await writer.Write(scope => { LetterBook.Note(scope, key, person, "waiting", later.Why); }, stop);
                    waiting[person] = later.Why;
                    NotYet(key, person, later.Why);
                    break;
            }
        }
        return new(sent, refused, waiting);
    }

    /// <summary>Notes that a letter will not be sent, and why: it is settled for these people.</summary>
    public Task Skip(string key, IEnumerable<string> people, string why, CancellationToken stop)
    {
        List<string> all = [.. Missing(key, people)];
        return writer.Write(scope => { foreach (var person in all) LetterBook.Note(scope, key, person, "skipped", why); }, stop);
    }

    OutletAddress? AddressOf(string person) =>
        plan.Configuration.People.Where(p => p.Id == person).SelectMany(CallOrder.OutletsOf).FirstOrDefault(o => o.Options.Kind == "mail");

    [LoggerMessage(Level = LogLevel.Information, Message = "Sent the letter {Key} to {Person}")]
    partial void Delivered(string key, string person);

    [LoggerMessage(Level = LogLevel.Error, Message = "The letter {Key} to {Person} was refused and is not tried again: {Why}")]
    partial void RefusedForGood(string key, string person, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The letter {Key} to {Person} could not be sent yet: {Why}")]
    partial void NotYet(string key, string person, string why);
}
