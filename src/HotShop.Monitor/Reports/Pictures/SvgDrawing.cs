using System.Globalization;
using System.Net;
using System.Text;

namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Writes a drawing as SVG. Colours are classes, so that the page's light and dark choose them.</summary>
static class SvgDrawing
{
    /// <param name="id">Of this drawing on its page: begins the ids within it.</param>
    public static string Write(Drawing drawing, string id)
    {
        var svg = new StringBuilder();
        Add(svg, $"<svg id=\"{id}\" viewBox=\"0 0 {drawing.Width:0.#} {drawing.Height:0.#}\" role=\"img\" aria-labelledby=\"{id}-title\"><title id=\"{id}-title\">{Text(drawing.Title)}</title>");
        Add(svg, $"<defs><pattern id=\"{id}-hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><line class=\"hatch-line\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"7\"/></pattern></defs>");
        foreach (var mark in drawing.Marks) Write(svg, mark, id);
        return svg.Append("</svg>").ToString();
    }

    static void Write(StringBuilder svg, Mark mark, string id)
    {
        switch (mark)
        {
            case Mark.Box box:
                Add(svg, $"<rect x=\"{box.X:0.##}\" y=\"{box.Y:0.##}\" width=\"{Math.Max(0, box.Width):0.##}\" height=\"{Math.Max(0, box.Height):0.##}\" {Paint(box.Tone, box.Fill, id)}/>");
                break;
            case Mark.Area area:
                Add(svg, $"<path d=\"{Path(area.Edge)}Z\" {Paint(area.Tone, area.Fill, id)}/>");
                break;
            case Mark.Line line:
                Add(svg, $"<path d=\"{Path(line.Points)}\" class=\"drawn t-{Name(line.Tone)}\" stroke-width=\"{line.Width:0.##}\"{(line.IsDashed ? " stroke-dasharray=\"4 3\"" : "")}/>");
                break;
            case Mark.Dot dot:
                Add(svg, $"<circle cx=\"{dot.X:0.##}\" cy=\"{dot.Y:0.##}\" r=\"{dot.Radius:0.##}\" class=\"{(dot.IsOpen ? "drawn open" : "filled")} t-{Name(dot.Tone)}\"/>");
                break;
            case Mark.Words words:
                Add(svg, $"<text x=\"{words.X:0.##}\" y=\"{words.Y:0.##}\" font-size=\"{words.Size:0.##}\" class=\"filled t-{Name(words.Tone)}\"{Align(words.Anchor)}{(words.IsBold ? " font-weight=\"700\"" : "")}>{Text(words.Text)}</text>");
                break;
        }
    }

    static string Paint(Tone tone, Fill fill, string id) => fill switch
    {
        Fill.Hatched => $"class=\"hatched\" fill=\"url(#{id}-hatch)\"",
        Fill.Expected => $"class=\"filled expected t-{Name(tone)}\"",
        _ => $"class=\"filled t-{Name(tone)}\"",
    };

    static string Align(Anchor anchor) => anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };

    static string Name(Tone tone) => tone.ToString().ToLowerInvariant();

    static string Path(IReadOnlyList<Spot> points) =>
        string.Concat(points.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{p.X:0.##},{p.Y:0.##}")));

    static string Text(string text) => WebUtility.HtmlEncode(text);

    static void Add(StringBuilder svg, FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture));
}
