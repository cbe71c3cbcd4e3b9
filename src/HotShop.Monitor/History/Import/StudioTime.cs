using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.History.Import;

/// <summary>Times as people and programs write them in a table: RFC 3339, or a local time of the studio without an offset. Pure.</summary>
static class StudioTime
{
    static readonly LocalDateTimePattern seconds = LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd' 'HH':'mm':'ss;FFFFFFFFF");
    static readonly LocalDateTimePattern minutes = LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd' 'HH':'mm");

    /// <returns>The instant, or why the text names none or two.</returns>
    public static (Instant At, string? Problem) Parse(string? text, DateTimeZone zone)
    {
        if (text is null) return (default, "the time is missing: write one like 2026-03-01T02:13:05Z, or 2026-03-01 02:13 in the studio's time");
        if (StrictTime.Parse(text) is { } at) return (at.Whole(), null);
        var plain = text.Length > 10 && text[10] is 'T' or 't' ? $"{text[..10]} {text[11..]}" : text;
        if (!(seconds.Parse(plain) is { Success: true } parsed || (parsed = minutes.Parse(plain)).Success))
            return (default, $"'{Shown.Short(text)}' is no time: write one like 2026-03-01T02:13:05Z, or 2026-03-01 02:13 in the studio's time");
        var mapping = zone.MapLocal(parsed.Value);
        return mapping.Count switch
        {
            1 => (mapping.Single().ToInstant().Whole(), null),
            0 => (default, $"'{text}' was skipped when the clocks went forward in {zone.Id}: write it with its offset"),
            _ => (default, $"'{text}' came twice when the clocks went back in {zone.Id}: write it with its offset, e.g. {text[..10]}T{plain[11..16]}:00{mapping.First().Offset:m}"),
        };
    }

    static Instant Whole(this Instant at) => Store.Columns.Whole(at);
}
