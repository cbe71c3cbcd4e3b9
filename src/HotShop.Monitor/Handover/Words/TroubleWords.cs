using System.Globalization;
using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Handover.Words;

/// <summary>Troubles of the night, who took them, and what was found later.</summary>
static class TroubleWords
{
    public static IReadOnlyList<HandoverLine> Of(Morning morning, MorningTimes times)
    {
        var lines = morning.Urgent.Select(t => Line(t, times)).ToList();
        var others = morning.Troubles.Where(t => !t.IsUrgent).ToList();
        if (lines.Count == 0) lines.Add(new(others.Count == 0 ? "Nothing rang, and nothing waited for the morning." : "Nothing rang."));
        if (others.Count > 0)
            lines.Add(new($"{Capital(MorningTimes.Count(others.Count, "alarm", "alarms"))} called nobody", string.Join("; ", others.Take(6).Select(t => $"{times.At(t.Occurrence.Since)} {t.Occurrence.Words.Sentence}")) + (others.Count > 6 ? "; the rest is on the alarms page." : "."), 3));
        return lines;
    }

    static HandoverLine Line(NightTrouble trouble, MorningTimes times)
    {
        var o = trouble.Occurrence;
        var parts = new List<string>();
        if (trouble.Called.Count > 0) parts.Add($"Called: {string.Join(", ", trouble.Called)}{(trouble.Rounds > 1 ? string.Create(CultureInfo.InvariantCulture, $", in {trouble.Rounds} rounds") : "")}.");
        parts.Add(o.AcknowledgedAt is { } at ? $"{o.AcknowledgedBy} had it after {MorningTimes.Span(at - o.Since)}." : "Nobody said they had it.");
        parts.Add(o.ClearedAt is { } end ? $"Ended {times.At(end)}, after {MorningTimes.Span(end - o.Since)}." : "It is open.");
        if (trouble.Cause is { } cause) parts.Add($"Cause{(cause.Who is { } who ? $", as {who} wrote" : "")}: {cause.Fields["text"]?.ToString() ?? cause.Entry}.");
        return new($"{times.At(o.Since)} {o.Words.Sentence}.", string.Join(" ", parts), o.Priority);
    }

    /// <summary>Late readings: what would have rung, and what only filled a gap.</summary>
    public static IReadOnlyList<HandoverLine> Late(Morning morning, MorningTimes times) => [.. morning.Late.Select(news =>
    {
        var (s, alarm) = (news.Stretch, news.Alarm);
        var span = $"{times.At(s.From)} to {times.At(s.Until)}";
        if (alarm is null) return new HandoverLine($"{news.ApplianceName} {news.ChannelName}: readings of {span} came at {times.At(s.ArrivedAt)}{Values(s.Lowest, s.Highest, news)}.");
        var what = alarm.Kind switch
        {
            AlarmKinds.MainsLost => "mains power was off",
            AlarmKinds.LockOut => "the burner was locked out",
            _ => $"{news.ChannelName} was up to {Value(s.Highest, alarm.Unit)}, limit {Value(alarm.Limit ?? 0, alarm.Unit)}",
        };
        return new HandoverLine($"{span} {news.ApplianceName}: {what}.", $"Found later: the readings came at {times.At(s.ArrivedAt)}, so it rang nobody.", alarm.Priority);
    })];

    static string Values(double lowest, double highest, LateNews news) =>
        news.IsTemperature ? $": {Say.Temperature(lowest)} to {Say.Temperature(highest)}" : "";

    static string Value(double value, string? unit) => unit switch
    {
        "Cel" => Say.Temperature(value),
        "[ppm]" => string.Create(CultureInfo.InvariantCulture, $"{value:0} ppm"),
        "%" => string.Create(CultureInfo.InvariantCulture, $"{value:0} % of the lower explosive limit"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} {unit}"),
    };

    static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
