using System.Text;
using HotShop.Monitor.Handover;
using NodaTime;
using static HotShop.Monitor.Web.Pages.Dawn.DawnPlane;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>The ribbon of one appliance: colour is its heat, place across the lane its temperature, thickness how hard it was fed.</summary>
internal static class DawnRibbon
{
    const double Thin = 1.6, Thick = 5.5;
    const int MostStops = 40;

    public static void Draw(StringBuilder svg, DawnPlane plane, ApplianceNight lane, int index, string id)
    {
        var place = Place(plane, lane, index);
        var run = new List<CoursePoint>();
        var part = 0;
        foreach (var point in lane.Course)
        {
            if (run.Count > 0 && point.At - run[^1].At > lane.CourseGap)
            {
                Run(svg, plane, run, place, $"ribbon-{id}-{index}-{part++}");
                run = [];
            }
            run.Add(point);
        }
        Run(svg, plane, run, place, $"ribbon-{id}-{index}-{part}");
    }

    /// <summary>A fire that holds or works is expected to go on as it is.</summary>
    public static void Expected(StringBuilder svg, DawnPlane plane, ApplianceNight lane, int index, Instant now)
    {
        var last = lane.Course[^1];
        var (across, half) = (Place(plane, lane, index)(last.Celsius), Half(last));
        svg.Append(plane.Rect(plane.Along(now), plane.Along(plane.To), across - half, across + half, $"class=\"ribbon expected\" fill=\"{GlowTable.Hex(last.Celsius)}\""));
    }

    /// <summary>A fire that stays within a narrow range is shown that range, never less than 60 °C; anything that cools far is shown from the room's temperature up.</summary>
    static Func<double, double> Place(DawnPlane plane, ApplianceNight lane, int index)
    {
        if (lane is not { Low: { } low, High: { } high }) return _ => plane.Lane(index);
        var (from, to) = high.Celsius - low.Celsius > 250 ? (Math.Min(low.Celsius, 20), high.Celsius + 20)
            : ((low.Celsius + high.Celsius) / 2 - Math.Max(30, (high.Celsius - low.Celsius) / 2), (low.Celsius + high.Celsius) / 2 + Math.Max(30, (high.Celsius - low.Celsius) / 2));
        // Hotter is up on the wall, and to the right on a phone.
        var sign = plane.IsAcross ? -1 : 1;
        return celsius => plane.Lane(index) + sign * plane.Half * (Math.Clamp((celsius - from) / (to - from), 0, 1) * 2 - 1);
    }

    static double Half(CoursePoint point) => Thin + (point.Feed ?? 0.25) * (Thick - Thin);

    static void Run(StringBuilder svg, DawnPlane plane, List<CoursePoint> run, Func<double, double> place, string id)
    {
        if (run.Count < 2) return;
        var (first, last) = (plane.Along(run[0].At), plane.Along(run[^1].At));
        var (up, down) = (new List<string>(run.Count), new List<string>(run.Count));
        foreach (var point in run)
        {
            var (along, across, half) = (plane.Along(point.At), place(point.Celsius), Half(point));
            up.Add(plane.Point(along, across - half));
            down.Add(plane.Point(along, across + half));
        }
        down.Reverse();
        svg.Append(Number($"<defs><linearGradient id=\"{id}\" gradientUnits=\"userSpaceOnUse\" "))
            .Append(plane.IsAcross ? Number($"x1=\"{first:0.#}\" x2=\"{last:0.#}\" y1=\"0\" y2=\"0\">") : Number($"x1=\"0\" x2=\"0\" y1=\"{first:0.#}\" y2=\"{last:0.#}\">"));
        var every = Math.Max(1, run.Count / MostStops);
        for (var i = 0; i < run.Count; i += every)
            svg.Append(Number($"<stop offset=\"{(plane.Along(run[i].At) - first) / Math.Max(0.1, last - first):0.###}\" stop-color=\"{GlowTable.Hex(run[i].Celsius)}\"/>"));
        svg.Append("</linearGradient></defs>").Append(Number($"<path class=\"ribbon\" fill=\"url(#{id})\" d=\"M{string.Join('L', up)}L{string.Join('L', down)}Z\"/>"));
    }
}
