using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Notifications;

/// <summary>
/// The words on a phone: what, where, value against limit, since when, what first, a caution. At most 240 characters without the link,
/// so that a lock screen shows all of it. The number after # grows with every round: the same number twice is the same message twice.
/// </summary>
static class MessageText
{
    public const int LongestCharacters = 240;
    const int LongestCaution = 80, LongestSentence = 130;

    static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static string Title(CallReason reason, string appliance, string kind, int priority) => reason switch
    {
        CallReason.NotAcknowledged => $"Nobody has it yet: {appliance}, {Plain(kind)}",
        CallReason.NextToCall or CallReason.NobodyReached => $"You are next to call: {appliance}, {Plain(kind)}",
        CallReason.WokenByHand or CallReason.EverybodyIsCalled => $"You are asked for: {appliance}, {Plain(kind)}",
        CallReason.SomebodyHasIt => $"Somebody has it: {appliance}, {Plain(kind)}",
        CallReason.HasEnded => $"Ended: {appliance}, {Plain(kind)}",
        _ => $"Priority {priority}: {appliance}, {Plain(kind)}",
    };

    public static string Call(AlarmSnapshot alarm, int step, DateTimeZone zone)
    {
        var caution = Cut(FirstSentence(alarm.Caution), LongestCaution);
        var head = $"#{step} {Closed(Cut(alarm.Sentence, LongestSentence).TrimEnd('.') + $", since {At(alarm.Since, zone)}")} ";
        const string label = "First: ";
        var left = LongestCharacters - head.Length - label.Length - caution.Length - 1;
        return $"{head}{label}{Cut(FirstSentence(alarm.FirstStep), left)} {caution}".TrimEnd();
    }

    public static string Held(AlarmSnapshot alarm, int step, string who, Instant at, DateTimeZone zone) =>
        Cut($"#{step} {who} has it since {At(at, zone)}. It was: {Closed(alarm.Sentence)}", LongestCharacters);

    /// <summary>Never says that all is well: the service has seen the condition end, no more.</summary>
    public static string Closing(AlarmSnapshot alarm, int step, Instant endedAt, string? heldBy, DateTimeZone zone)
    {
        var who = heldBy is null ? "Nobody said they had it; look at it before you rely on it." : $"{heldBy} had it.";
        var head = $"#{step} Ended {At(endedAt, zone)} after {Span(endedAt - alarm.Since)}. {who} ";
        return head + Cut($"It was: {Closed(alarm.Sentence)}", LongestCharacters - head.Length);
    }

    /// <summary>For the one message that was not stored first.</summary>
    public static string Unstored(string problem, int step, string since)
    {
        const string advice = " No alarm can be raised until it is mended (this message is not stored either). First: look at the fires yourself, not alone; then at the monitor's computer.";
        var head = $"#{step} The monitor stores nothing since {since}: ";
        return head + Cut(problem.TrimEnd('.'), LongestCharacters - head.Length - advice.Length - 1) + "." + advice;
    }

    public static string At(Instant instant, DateTimeZone zone) => Clock.Format(instant.InZone(zone).TimeOfDay);

    public static string Span(Duration span) => span < Duration.FromMinutes(1)
        ? $"{Math.Max(0, span.TotalSeconds):0} s"
        : span < Duration.FromHours(2)
            ? string.Create(CultureInfo.InvariantCulture, $"{span.TotalMinutes:0} min")
            : string.Create(CultureInfo.InvariantCulture, $"{span.TotalHours:0.0} h");

    static string Plain(string kind) => kind.Replace('-', ' ');

    static string Closed(string sentence) => sentence.TrimEnd().TrimEnd('.') + ".";

    static string FirstSentence(string text)
    {
        var end = text.IndexOfAny(['.', '?', '!']);
        // "Smell gas? Get out ..." is one thought: a question takes its answer along.
        if (end >= 0 && text[end] == '?') end = text.IndexOfAny(['.', '!'], end + 1);
        return end < 0 ? text.Trim() : text[..(end + 1)].Trim();
    }

    /// <summary>Cut at a word, with an ellipsis that says so.</summary>
    static string Cut(string text, int longest)
    {
        if (text.Length <= longest) return text;
        if (longest <= 1) return "";
        var end = text.LastIndexOf(' ', longest - 1);
        if (end < longest / 2) end = longest - 1;
        if (char.IsHighSurrogate(text[end - 1])) end--;
        return text[..end].TrimEnd(' ', ',', ';') + "…";
    }
}
