using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Logbook;
using static HotShop.Monitor.Web.Pages.Dawn.DawnPlane;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>Marks of the strip: what was logged, priorities, and the heads of the lanes.</summary>
internal static class DawnMarks
{
    /// <summary>A gather is a tick, a charge a block; other entries have their words.</summary>
    public static void Entry(StringBuilder svg, DawnPlane plane, int lane, LogEntry entry)
    {
        var (along, side) = (plane.Along(entry.At), plane.Lane(lane) - plane.Half - 8);
        if (entry.Entry is "gather" or "tally") svg.Append(plane.Line(along, side - 3, along, side + 3, "tick"));
        else if (entry.Entry == "charge") svg.Append(plane.Rect(along - 3.5, along + 3.5, side - 4, side + 3, "class=\"block\""));
    }

    /// <summary>Priority as shape, digit and colour.</summary>
    public static string Priority(int priority, double x, double y, double scale) => Number($"<g class=\"mark mark-{priority}\" transform=\"translate({x:0.#},{y:0.#}) scale({scale:0.##})\">") + priority switch
    {
        1 => "<path class=\"shape\" d=\"M0,-17L17,0L0,17L-17,0Z\"/><text y=\"6\" font-size=\"17\" text-anchor=\"middle\">1</text>",
        2 => "<path class=\"shape\" d=\"M0,-16L17,13H-17Z\"/><text y=\"10\" font-size=\"16\" text-anchor=\"middle\">2</text>",
        _ => "<circle class=\"shape\" r=\"14\"/><text y=\"6\" font-size=\"16\" text-anchor=\"middle\">3</text>",
    } + "</g>";

    /// <summary>Filled: glass ready. Open: expected.</summary>
    public static void Triangle(StringBuilder svg, DawnPlane plane, int lane, double along, bool isExpected)
    {
        var side = plane.Lane(lane) - plane.Half - 8;
        svg.Append($"<path class=\"{(isExpected ? "open-mark" : "block")}\" d=\"M{plane.Point(along - 5, side - 4)}L{plane.Point(along + 5, side - 4)}L{plane.Point(along, side + 5)}Z\"/>");
    }

    /// <summary>What kind of appliance a lane is, drawn small, in the colour of its last temperature.</summary>
    public static void Head(StringBuilder svg, ApplianceNight lane, double x, double y, string number, double numberY)
    {
        var heat = lane.Last is { } last ? GlowTable.Hex(last.Celsius) : "none";
        svg.Append(Number($"<g transform=\"translate({x:0.#},{y:0.#})\">")).Append(lane.Kind switch
        {
            ApplianceKind.Furnace => $"<path class=\"masonry\" d=\"M-14,12V-6Q-14,-14 0,-14Q14,-14 14,-6V12Z\"/><path d=\"M-9,10V-4Q-9,-9 0,-9Q9,-9 9,-4V10Z\" fill=\"{heat}\"/><path class=\"head-pot\" d=\"M-6,0V10H6V0\"/>",
            ApplianceKind.GloryHole => $"<circle class=\"masonry\" r=\"13\"/><circle r=\"7\" fill=\"{heat}\"/>",
            ApplianceKind.Annealer => $"<path class=\"masonry\" d=\"M-13,-13H13V13H-13Z\"/><path d=\"M-9,-9H9V9H-9Z\" fill=\"{heat}\"/>",
            _ => $"<path class=\"masonry\" d=\"M-14,-8H14V10H-14Z\"/><path d=\"M-10,-4H10V6H-10Z\" fill=\"{heat}\"/>",
        }).Append("</g>");
        if (number.Length > 0) DawnStrip.Words(svg, x, numberY, number, "dim", "middle", 14);
    }
}
