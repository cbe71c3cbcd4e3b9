using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover.Words;
using HotShop.Monitor.Money;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Mail;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>The handover in plain words: page, mail and interface all say these.</summary>
sealed class HandoverWords(StudioPlan plan)
{
    public const string Caution =
        "This is a report, not protection: the service watches and advises, and controls nothing. Smell gas: touch no switch, get everybody out, call from outside. Only trained people relight a burner; local codes and licensed people decide.";

    readonly StockWords stock = new(new StudioFormat(plan.Configuration));

    public MorningTimes Times(Morning morning) => new(plan.Zone, morning.Night.Morning);

    /// <summary>The night in a sentence or three.</summary>
    public string Headline(Morning morning)
    {
        var times = Times(morning);
        if (morning.LastHeardAt is not { } heard) return "Nothing was measured in this night.";
        var sentences = new List<string>();
        if (morning.IsStale) sentences.Add($"Nothing has been heard since {times.At(heard)}.");
        var (open, all) = (morning.Urgent.Where(t => !t.HasEnded).ToList(), morning.Urgent.ToList());
        if (open.Count == 1) sentences.Add($"One trouble is open: {Name(open[0])}.");
        else if (open.Count > 1) sentences.Add($"{open.Count} troubles are open, the first: {Name(open[0])}.");
        else if (all.Count == 1) sentences.Add($"One trouble, ended at {times.At(all[0].Occurrence.ClearedAt!.Value)}.");
        else if (all.Count > 1) sentences.Add($"{all.Count} troubles, all ended, the last at {times.At(all.Max(t => t.Occurrence.ClearedAt!.Value))}.");
        else if (!morning.IsStale) sentences.Add("A quiet night.");
        var late = morning.Late.Count(n => n.Alarm is not null);
        if (late > 0) sentences.Add(late == 1 ? "One more was found later." : $"{late} more were found later.");
        if (GlassSentence(morning, times) is { } glass) sentences.Add(glass);
        return string.Join(" ", sentences);
    }

    /// <summary>What else counts, in one line.</summary>
    public string Lede(Morning morning)
    {
        var parts = morning.Pots.Select(p => (morning.Pots.Count > 1 ? p.Name + " " : "") + $"{stock.Glass(p.Report.State.MassKilograms)} of glass").ToList();
        if (StockWords.GasInShort(morning.Gas) is { } gas) parts.Add(gas);
        var others = morning.Troubles.Count(t => !t.IsUrgent);
        if (others > 0) parts.Add($"{MorningTimes.Count(others, "alarm", "alarms")} that called nobody");
        if (WornWords.DueInShort(morning.Worn) is { } due) parts.Add(due);
        return string.Join(" · ", parts);
    }

    public IReadOnlyList<HandoverSection> Sections(Morning morning)
    {
        var times = Times(morning);
        List<HandoverSection> all =
        [
            new("troubles", "Troubles", TroubleWords.Of(morning, times)),
            new("late", "Found later", TroubleWords.Late(morning, times)),
            new("fires", "Lows and highs", FireWords.Of(morning, times)),
            new("openings", "When the annealers are cool", OpeningWords.Of(morning, times), OpeningWords.Note),
            new("glass", "Glass", stock.Pots(morning, times)),
            new("gas", "Gas of the night", stock.Gas(morning, times)),
            new("tonight", "Who has the phone tonight", [TonightLine(morning.Tonight)]),
            new("worn", "Worn and due", WornWords.Of(morning.Worn, morning.Night.To, times)),
        ];
        return [.. all.Where(s => s.Lines.Count > 0)];
    }

    public string Title(Morning morning) => $"{plan.Configuration.Name}, the night to {Times(morning).MorningDay}";

    /// <summary>From when to when it tells, and how that is known.</summary>
    public string SpanSentence(Morning morning)
    {
        var times = Times(morning);
        return $"From {times.At(morning.Night.From)}, {(morning.Night.IsEndOfWorkLogged ? "the end of work" : "when the night begins by the configuration")}, to {times.At(morning.Night.To)}.";
    }

    /// <summary>Who looks after the shop.</summary>
    public string? TakenOverSentence(Morning morning) => morning.TakenOver is { } taken ? $"{taken.Who} took over at {Times(morning).At(taken.At)}."
        : morning.TakenOverBefore is { } before ? $"Nobody has taken over yet. {before.Who} did the day before." : null;

    /// <summary>The question that an ended trouble without a cause leaves.</summary>
    public static string Question(NightTrouble trouble) => $"{trouble.Occurrence.Words.Sentence}. Why?";

    public Letter Letter(string key, Morning morning) => HandoverLetter.Write(key, this, morning, NightLinks.BaseAddress(plan.Configuration.Http));

    string Name(NightTrouble trouble) => $"{plan.Appliance(trouble.Occurrence.Appliance)?.Name ?? "the monitor"}, {Wording.NameOf(trouble.Occurrence.Kind)}";

    static string? GlassSentence(Morning morning, MorningTimes times)
    {
        if (morning.Pots is not [{ } pot]) return null;
        if (pot.Report.WorkableKilograms.Value < 1) return "There is hardly any glass to work.";
        return pot.Report.ReadyAt is not { } at ? null : at <= morning.Now ? "The glass is ready." : $"The glass is ready at about {times.At(at)}.";
    }

    static HandoverLine TonightLine(Tonight tonight) => tonight.First is not { } first
        ? new("Nobody is named to be called.", "Write people and notifications.order into the configuration.")
        : new($"{first.Name} has the phone tonight{(first.Phone is { } phone ? $", {phone}" : "")}.",
            tonight.Next is { } next ? $"{next.Name} is called as well when nobody answers for {MorningTimes.Span(tonight.NextAfter)}." : "Nobody else is called after that.");
}
