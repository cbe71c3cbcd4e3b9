using System.Globalization;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>Where a moment and a lane lie: down the page on a phone, across it on a wall. Everything else of the drawing is the same.</summary>
/// <param name="Start">Where the time axis begins and ends, px.</param>
/// <param name="FirstLane">Middle of the first lane, px.</param>
/// <param name="Half">Half the height of the temperature in a lane, px.</param>
internal sealed record DawnPlane(bool IsAcross, Instant From, Instant To, double Start, double End, double FirstLane, double LaneStep, double Half)
{
    public double Along(Instant at) => Start + (End - Start) * Math.Clamp((at - From) / (To - From), 0, 1);

    public double Lane(int index) => FirstLane + LaneStep * index;

    /// <summary>A point by its place along the time and across the lanes.</summary>
    public string Point(double along, double across) => IsAcross ? Text(along, across) : Text(across, along);

    public string Line(double along1, double across1, double along2, double across2, string cls) => IsAcross
        ? Number($"<line class=\"{cls}\" x1=\"{along1:0.#}\" y1=\"{across1:0.#}\" x2=\"{along2:0.#}\" y2=\"{across2:0.#}\"/>")
        : Number($"<line class=\"{cls}\" x1=\"{across1:0.#}\" y1=\"{along1:0.#}\" x2=\"{across2:0.#}\" y2=\"{along2:0.#}\"/>");

    public string Rect(double along1, double along2, double across1, double across2, string attributes) => IsAcross
        ? Number($"<rect x=\"{along1:0.#}\" y=\"{across1:0.#}\" width=\"{Math.Max(0, along2 - along1):0.#}\" height=\"{across2 - across1:0.#}\" {attributes}/>")
        : Number($"<rect x=\"{across1:0.#}\" y=\"{along1:0.#}\" width=\"{across2 - across1:0.#}\" height=\"{Math.Max(0, along2 - along1):0.#}\" {attributes}/>");

    public static string Number(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    static string Text(double x, double y) => Number($"{x:0.#},{y:0.#}");
}
