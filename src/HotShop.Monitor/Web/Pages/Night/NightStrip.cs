using System.Globalization;
using System.Text;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Night;

/// <summary>What the night page draws of one trouble.</summary>
/// <param name="IsTemperature">Temperatures are drawn in the colour they have; anything else is a plain line.</param>
/// <param name="Words">Writes a value with its unit.</param>
internal sealed record NightPicture(
    IReadOnlyList<NightPoint> Points, Duration LongestGap, double? Limit, Instant Since, Instant Now, DateTimeZone Zone, bool IsTemperature, Func<double, string> Words);

/// <summary>
/// Two hours of strip as SVG, made by the service because the night page must work without script: eighty minutes back, forty ahead,
/// the moment of the trouble ringed and tied to the thread at the left.
/// </summary>
internal static class NightStrip
{
    const double Width = 390, Height = 176, Top = 26, Bottom = 134, ThreadX = 23;
    static readonly Duration Back = Duration.FromMinutes(80), Ahead = Duration.FromMinutes(40);

    public static string Svg(NightPicture picture)
    {
        var (from, now) = (picture.Now - Back, picture.Now);
        var points = picture.Points.Where(p => p.At >= from && p.At <= now).ToList();
        var course = Course(points, picture);
        var y = Scale(points, picture.Limit, course);
        var svg = new StringBuilder();
        Append(svg, $"<svg viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-labelledby=\"strip-title\"><title id=\"strip-title\">{Title(points, picture)}</title>");
        Append(svg, $"<defs><pattern id=\"hatch\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><line class=\"hatch-line\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"9\"/></pattern></defs>");
        if (picture.Limit is { } limit) Limit(svg, y(limit), picture.Words(limit));
        if (course is not null) Expected(svg, course, y, picture.IsTemperature);
        Gaps(svg, points, picture, from);
        Measured(svg, points, picture, y);
        Hours(svg, picture);
        Line(svg, X(now, now), 4, X(now, now), Bottom + 6, "now");
        Thread(svg, points, picture, y);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>Priority as a shape with its digit, for a drawing whose middle is (0, 0).</summary>
    public static string Mark(int priority) => priority switch
    {
        1 => "<path d=\"M0,-17L17,0L0,17L-17,0Z\"/><text y=\"6\" text-anchor=\"middle\">1</text>",
        2 => "<path d=\"M0,-16L17,13H-17Z\"/><text y=\"9\" text-anchor=\"middle\">2</text>",
        _ => "<circle r=\"14\"/><text y=\"6\" text-anchor=\"middle\">3</text>",
    };

    static double X(Instant at, Instant now) => (at - (now - Back)) / (Back + Ahead) * Width;

    /// <summary>Nothing is expected of a sensor that is silent.</summary>
    static NightCourse? Course(List<NightPoint> points, NightPicture picture) =>
        points.Count > 0 && picture.Now - points[^1].At <= Duration.Max(picture.LongestGap, Duration.FromMinutes(2)) ? NightCourse.Of(points, picture.Now) : null;

    static Func<double, double> Scale(List<NightPoint> points, double? limit, NightCourse? course)
    {
        var values = points.Select(p => p.Value).ToList();
        if (limit is { } l) values.Add(l);
        if (course is not null) values.Add(course.After(Ahead).Value);
        if (values.Count == 0) return _ => (Top + Bottom) / 2;
        var (low, high) = (values.Min(), values.Max());
        var pad = Math.Max((high - low) * 0.12, Math.Max(1, Math.Abs(high) * 0.005));
        return v => Bottom - (Math.Clamp(v, low - pad, high + pad) - low + pad) / (high - low + 2 * pad) * (Bottom - Top);
    }

    static void Limit(StringBuilder svg, double y, string words)
    {
        Append(svg, $"<line class=\"limit\" x1=\"0\" y1=\"{y:0.0}\" x2=\"{Width}\" y2=\"{y:0.0}\"/>");
        Text(svg, 62, y - 6, $"limit {words}", "dim", "start");
    }

    static void Expected(StringBuilder svg, NightCourse course, Func<double, double> y, bool isTemperature)
    {
        var (up, down, middle) = (new List<string>(), new List<string>(), new List<string>());
        for (var i = 0; i <= 10; i++)
        {
            var ahead = Ahead * i / 10;
            var (value, half) = course.After(ahead);
            var x = X(course.From + ahead, course.From);
            up.Add(At(x, y(value + half)));
            down.Insert(0, At(x, y(value - half)));
            middle.Add(At(x, y(value)));
        }
        Append(svg, $"<path class=\"band\" d=\"M{string.Join('L', up)}L{string.Join('L', down)}Z\"/>");
        // Below 700 °C the glow is too dark to be seen as a thin line at night.
        var colour = isTemperature && course.Value > 700 ? GlowTable.Hex(course.Value) : "currentColor";
        Append(svg, $"<path class=\"course\" d=\"M{string.Join('L', middle)}\" stroke=\"{colour}\"/>");
    }

    static void Gaps(StringBuilder svg, List<NightPoint> points, NightPicture picture, Instant from)
    {
        var edges = points.Select(p => p.At).Prepend(from).Append(picture.Now).ToList();
        for (var i = 1; i < edges.Count; i++)
        {
            if (edges[i] - edges[i - 1] <= Duration.Max(picture.LongestGap, Duration.FromMinutes(2))) continue;
            var (a, b) = (X(edges[i - 1], picture.Now), X(edges[i], picture.Now));
            Append(svg, $"<rect class=\"gap-edge\" fill=\"url(#hatch)\" x=\"{a:0.0}\" y=\"{Top}\" width=\"{b - a:0.0}\" height=\"{Bottom - Top}\"/>");
            if (b - a > 16) Text(svg, Math.Max((a + b) / 2, 66), Top - 8, "no reading", "dim", "middle");
        }
    }

    /// <summary>Short pieces, each in the colour of its own temperature; never across a gap.</summary>
    static void Measured(StringBuilder svg, List<NightPoint> points, NightPicture picture, Func<double, double> y)
    {
        var (edges, pieces) = (new StringBuilder(), new StringBuilder());
        var every = Math.Max(1, points.Count / 120);
        for (var i = every; i < points.Count; i += every)
        {
            var (a, b) = (points[i - every], points[i]);
            if (b.At - a.At > Duration.Max(picture.LongestGap, Duration.FromMinutes(2)) * every) continue;
            var colour = picture.IsTemperature ? GlowTable.Hex((a.Value + b.Value) / 2) : "currentColor";
            var ends = string.Create(CultureInfo.InvariantCulture, $"x1=\"{X(a.At, picture.Now):0.0}\" y1=\"{y(a.Value):0.0}\" x2=\"{X(b.At, picture.Now):0.0}\" y2=\"{y(b.Value):0.0}\"");
            edges.Append("<line class=\"edge\" ").Append(ends).Append("/>");
            pieces.Append("<line class=\"measured\" ").Append(ends).Append(" stroke=\"").Append(colour).Append("\"/>");
        }
        svg.Append(edges).Append(pieces);
    }

    static void Hours(StringBuilder svg, NightPicture picture)
    {
        Line(svg, 0, Bottom + 2, Width, Bottom + 2, "hair");
        var first = picture.Now - Back;
        for (var at = Instant.FromUnixTimeSeconds((first.ToUnixTimeSeconds() / 1800 + 1) * 1800); at < picture.Now + Ahead; at += Duration.FromMinutes(30))
        {
            var x = X(at, picture.Now);
            Line(svg, x, Bottom + 2, x, Bottom + 8, "hair");
            if (Math.Abs(x - X(picture.Now, picture.Now)) > 44 && x is > 18 and < Width - 18) Text(svg, x, Bottom + 26, Clock(at, picture.Zone), "dim", "middle");
        }
        Text(svg, X(picture.Now, picture.Now), Bottom + 26, "now", "", "middle");
    }

    /// <summary>From the thread at the left edge to the ring round the moment it began, or to the edge when that is longer ago.</summary>
    static void Thread(StringBuilder svg, List<NightPoint> points, NightPicture picture, Func<double, double> y)
    {
        var x = Math.Max(X(picture.Since, picture.Now), ThreadX + 22);
        var near = points.Count > 0 ? points.MinBy(p => Math.Abs((p.At - picture.Since).TotalSeconds)).Value : (double?)null;
        var ringY = near is { } value ? y(value) : (Top + Bottom) / 2;
        Append(svg, $"<path class=\"thread\" d=\"M{ThreadX},8H{x:0.0}V{ringY - 12:0.0}\"/><circle class=\"thread\" cx=\"{x:0.0}\" cy=\"{ringY:0.0}\" r=\"12\"/>");
    }

    static string Title(List<NightPoint> points, NightPicture picture)
    {
        if (points.Count == 0) return "No readings in the last eighty minutes";
        var (first, last) = (points[0], points[^1]);
        var course = Course(points, picture) is { } c ? $", in forty minutes about {picture.Words(c.After(Ahead).Value)} if it goes on so" : "";
        return System.Net.WebUtility.HtmlEncode(
            $"From {picture.Words(first.Value)} at {Clock(first.At, picture.Zone)} to {picture.Words(last.Value)} at {Clock(last.At, picture.Zone)}; it began at {Clock(picture.Since, picture.Zone)}{course}");
    }

    internal static string Clock(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("HH:mm", CultureInfo.InvariantCulture);

    static string At(double x, double y) => string.Create(CultureInfo.InvariantCulture, $"{x:0.0},{y:0.0}");

    static void Line(StringBuilder svg, double x1, double y1, double x2, double y2, string style) =>
        Append(svg, $"<line class=\"{style}\" x1=\"{x1:0.0}\" y1=\"{y1:0.0}\" x2=\"{x2:0.0}\" y2=\"{y2:0.0}\"/>");

    static void Text(StringBuilder svg, double x, double y, string words, string style, string anchor) =>
        Append(svg, $"<text class=\"{style}\" x=\"{x:0.0}\" y=\"{y:0.0}\" text-anchor=\"{anchor}\">{System.Net.WebUtility.HtmlEncode(words)}</text>");

    static void Append(StringBuilder svg, FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture));
}
