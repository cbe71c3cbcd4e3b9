using System.Globalization;
using System.Net;
using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Modes;
using NodaTime;
using static HotShop.Monitor.Web.Pages.Dawn.DawnPlane;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>
/// The strip of the night as SVG, made by the service so that the morning is readable without scripts: one ribbon an appliance in the colour its heat has, thick where
/// it was fed, gaps hatched, troubles as closed threads. Down the page with the stories beside it, or across it.
/// </summary>
internal static class DawnStrip
{
    const double PhoneWidth = 390, PhoneHeight = 580, WallWidth = 1000, WallLane = 62;
    static readonly Duration ahead = Duration.FromHours(2.5);

    public static string Down(Handover.Morning m, IReadOnlyList<DawnStory> stories, DateTimeZone zone)
    {
        var step = m.Appliances.Count > 4 ? 26 : m.Appliances.Count == 4 ? 33 : 38;
        var plane = new DawnPlane(false, m.Night.From, End(m), 60, PhoneHeight - 14, 66, step, Half: 6);
        var svg = Begin("down", PhoneWidth, PhoneHeight, m, zone);
        var lanesEnd = plane.Lane(m.Appliances.Count - 1) + 18;
        Ground(svg, plane, m, zone, 48, lanesEnd);
        Lanes(svg, plane, m, "down");
        Threads(svg, plane, m, 52, lanesEnd - 2);
        for (var i = 0; i < m.Appliances.Count; i++) DawnMarks.Head(svg, m.Appliances[i], plane.Lane(i), 18, NumberOf(m.Appliances[i], m.Appliances), 47);
        svg.Append(plane.Line(plane.Along(m.Night.To), 48, plane.Along(m.Night.To), PhoneWidth, "now"));
        Words(svg, 42, plane.Along(m.Night.To) + 5, m.Night.To == m.Now ? "now" : Clock(m.Night.To, zone), "", "end", 15);
        DawnWords.Beside(svg, plane, m, stories, lanesEnd + 8, PhoneWidth, zone);
        return svg.Append("</svg>").ToString();
    }

    public static string Across(Handover.Morning m, IReadOnlyList<DawnStory> stories, DateTimeZone zone)
    {
        var height = 30 + WallLane * m.Appliances.Count + 30;
        var plane = new DawnPlane(true, m.Night.From, End(m), 132, WallWidth - 8, 30 + WallLane / 2, WallLane, Half: 16);
        var svg = Begin("across", WallWidth, height, m, zone);
        Ground(svg, plane, m, zone, 24, height - 30);
        for (var i = 0; i < m.Appliances.Count; i++) Words(svg, 0, plane.Lane(i) + 5, m.Appliances[i].Name, "", "start", 16);
        Lanes(svg, plane, m, "across");
        Threads(svg, plane, m, 26, null);
        DawnWords.Above(svg, plane, m, stories, zone);
        svg.Append(plane.Line(plane.Along(m.Night.To), 24, plane.Along(m.Night.To), height - 26, "now"));
        Words(svg, plane.Along(m.Night.To), height - 8, m.Night.To == m.Now ? "now" : Clock(m.Night.To, zone), "", "middle", 15);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>A morning that is going on has some of it before it.</summary>
    static Instant End(Handover.Morning m) => m.Night.To == m.Now ? m.Night.To + ahead : m.Night.To + Duration.FromMinutes(20);

    static StringBuilder Begin(string id, double width, double height, Handover.Morning m, DateTimeZone zone) => new StringBuilder()
        .Append(Number($"<svg viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"strip-{id}-title\"><title id=\"strip-{id}-title\">"))
        .Append(WebUtility.HtmlEncode($"The night from {Clock(m.Night.From, zone)} to {Clock(m.Night.To, zone)}, a ribbon for each of {string.Join(", ", m.Appliances.Select(a => a.Name))}; the list below says the same"))
        .Append(Number($"</title><defs><pattern id=\"hatch-{id}\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><line class=\"hatch-line\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"8\"/></pattern></defs>"));

    /// <summary>Night hours shaded, a hairline each second or third hour with its number.</summary>
    static void Ground(StringBuilder svg, DawnPlane plane, Handover.Morning m, DateTimeZone zone, double low, double high)
    {
        var day = m.Night.Morning;
        Instant At(LocalDate date, int hour) => date.At(new LocalTime(hour, 0)).InZoneLeniently(zone).ToInstant();
        var (dark, light) = (Instant.Max(At(day.PlusDays(-1), 20), plane.From), Instant.Min(At(day, 7), plane.To));
        if (light > dark) svg.Append(plane.Rect(plane.Along(dark), plane.Along(light), low, high, "class=\"night-hours\""));
        var every = (plane.To - plane.From).TotalHours > 16 ? 3 : 2;
        for (var at = Instant.FromUnixTimeSeconds((plane.From.ToUnixTimeSeconds() / 3600 + 1) * 3600); at < plane.To; at += Duration.FromHours(1))
        {
            if (at.InZone(zone).Hour % every != 0) continue;
            svg.Append(plane.Line(plane.Along(at), low, plane.Along(at), high, "hair"));
            if (Math.Abs(plane.Along(at) - plane.Along(m.Night.To)) < 20) continue;
            var hour = at.InZone(zone).Hour.ToString("00", CultureInfo.InvariantCulture);
            if (plane.IsAcross) Words(svg, plane.Along(at), high + 22, hour, "faint", "middle", 15);
            else Words(svg, 42, plane.Along(at) + 5, hour, "faint", "end", 15);
        }
    }

    static void Lanes(StringBuilder svg, DawnPlane plane, Handover.Morning m, string id)
    {
        for (var i = 0; i < m.Appliances.Count; i++)
        {
            var lane = m.Appliances[i];
            DawnRibbon.Draw(svg, plane, lane, i, id);
            foreach (var gap in lane.Gaps)
                svg.Append(plane.Rect(plane.Along(gap.From), plane.Along(gap.To), plane.Lane(i) - plane.Half - 5, plane.Lane(i) + plane.Half + 5, $"class=\"gap-edge\" fill=\"url(#hatch-{id})\""));
            var steady = lane.Mode.WantsFire() && lane.Last is not null && m.Night.To - lane.Last.At <= lane.CourseGap && !m.Urgent.Any(t => !t.HasEnded && t.Occurrence.Appliance == lane.Appliance);
            if (steady && plane.To - m.Night.To > Duration.FromHours(1)) DawnRibbon.Expected(svg, plane, lane, i, m.Night.To);
            foreach (var entry in m.Log.Where(e => e.Appliance == lane.Appliance)) DawnMarks.Entry(svg, plane, i, entry);
        }
    }

    /// <summary>A trouble that is over is a box from its beginning to its end; one that is open runs on to now.</summary>
    static void Threads(StringBuilder svg, DawnPlane plane, Handover.Morning m, double edge, double? markEdge)
    {
        foreach (var trouble in m.Urgent.Take(6))
        {
            var lane = Index(m, trouble.Occurrence.Appliance);
            var (from, to) = (plane.Along(Instant.Max(trouble.Occurrence.Since, plane.From)), plane.Along(trouble.Occurrence.ClearedAt ?? m.Night.To));
            to = Math.Max(to, from + 6);
            var side = lane < 0 ? edge : Math.Max(edge, plane.Lane(lane) - plane.Half - 9);
            var reach = lane < 0 ? edge + 8 : plane.Lane(lane);
            var closed = trouble.HasEnded ? $"L{plane.Point(to, reach)}" : "";
            var d = $"M{plane.Point(from, reach)}L{plane.Point(from, side)}L{plane.Point(to, side)}{closed}";
            svg.Append($"<path class=\"thread-edge\" d=\"{d}\"/><path class=\"thread thread-{trouble.Occurrence.Priority}\" d=\"{d}\"/>");
            if (markEdge is { } far) svg.Append(plane.Line(from, reach, from, far, $"thread thread-{trouble.Occurrence.Priority}"));
        }
    }

    internal static int Index(Handover.Morning m, string? appliance)
    {
        for (var i = 0; i < m.Appliances.Count; i++) if (m.Appliances[i].Appliance == appliance) return i;
        return -1;
    }

    /// <summary>Of several of a kind, which one it is; nothing where there is only one.</summary>
    static string NumberOf(ApplianceNight one, IReadOnlyList<ApplianceNight> all)
    {
        var same = all.Where(a => a.Kind == one.Kind).ToList();
        return same.Count == 1 ? "" : (same.IndexOf(one) + 1).ToString(CultureInfo.InvariantCulture);
    }

    internal static void Words(StringBuilder svg, double x, double y, string words, string cls, string anchor, double size) => svg
        .Append(Number($"<text x=\"{x:0.#}\" y=\"{y:0.#}\" font-size=\"{size:0.#}\" text-anchor=\"{anchor}\" class=\"strip-words {cls}\">")).Append(WebUtility.HtmlEncode(words)).Append("</text>");

    internal static string Clock(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("HH:mm", CultureInfo.InvariantCulture);
}
