using System.Globalization;
using HotShop.Monitor.Reports.Pictures;

namespace HotShop.Evaluation.Numbers;

/// <summary>One axis of a chart.</summary>
/// <param name="Name">Quantity and unit.</param>
/// <param name="Step">Between two figures of the axis.</param>
sealed record Axis(string Name, double Low, double High, double Step)
{
    public IEnumerable<double> Ticks
    {
        get
        {
            for (var i = 0; Low + i * Step <= High + Step * 1e-6; i++) yield return Low + i * Step;
        }
    }
}

/// <summary>A plot in the report's own marks: axes, curves, and words beside the curves instead of a key.</summary>
sealed class Chart
{
    const double Width = 1000, Height = 620, Size = 24, Left = 86, Right = 970, Top = 84, Bottom = 540;

    readonly Axis x, y;
    readonly List<Mark> marks = [];
    readonly string title;

    public Chart(string title, Axis x, Axis y)
    {
        (this.title, this.x, this.y) = (title, x, y);
        marks.Add(new Mark.Box(0, 0, Width, Height, Tone.Ground));
        marks.Add(new Mark.Words(20, 38, title, Size * 1.15, Tone.Ink, IsBold: true));
        marks.Add(new Mark.Words(20, 70, y.Name, Size * 0.9, Tone.Dim));
        marks.Add(new Mark.Words(Right, Height - 16, x.Name, Size * 0.9, Tone.Dim, Anchor.End));
        foreach (var tick in y.Ticks)
        {
            marks.Add(new Mark.Line([new(Left, Y(tick)), new(Right, Y(tick))], Tone.Band, 1));
            marks.Add(new Mark.Words(Left - 10, Y(tick) + 8, Text(tick), Size * 0.9, Tone.Faint, Anchor.End));
        }
        foreach (var tick in x.Ticks)
        {
            marks.Add(new Mark.Line([new(X(tick), Bottom), new(X(tick), Bottom + 8)], Tone.Hair, 1.5));
            marks.Add(new Mark.Words(X(tick), Bottom + 32, Text(tick), Size * 0.9, Tone.Faint, Anchor.Middle));
        }
        marks.Add(new Mark.Line([new(Left, Bottom), new(Right, Bottom)], Tone.Hair, 1.5));
    }

    public Drawing Drawing => new(Width, Height, title, marks);

    /// <summary>A curve through points; those off the plot are left out.</summary>
    public Chart Curve(IEnumerable<(double X, double Y)> points, Tone tone = Tone.Ink, double width = 3.5, bool dashed = false)
    {
        var inside = points.Where(p => p.X >= x.Low && p.X <= x.High && p.Y >= y.Low && p.Y <= y.High).Select(p => new Spot(X(p.X), Y(p.Y))).ToList();
        if (inside.Count > 1) marks.Add(new Mark.Line(inside, tone, width, dashed));
        return this;
    }

    public Chart Band(IReadOnlyList<(double X, double Low, double High)> points)
    {
        marks.Add(new Mark.Area([.. points.Select(p => new Spot(X(p.X), Y(p.High))), .. points.Reverse().Select(p => new Spot(X(p.X), Y(p.Low)))], Tone.Band));
        return this;
    }

    public Chart Box(double fromX, double toX, Tone tone)
    {
        marks.Add(new Mark.Box(X(fromX), Top, X(toX) - X(fromX), Bottom - Top, tone));
        return this;
    }

    public Chart Dots(IEnumerable<(double X, double Y)> points, bool open = false, double radius = 5)
    {
        marks.AddRange(points.Select(p => new Mark.Dot(X(p.X), Y(p.Y), radius, Tone.Ink, open)));
        return this;
    }

    /// <summary>Words at a place of the plot, moved by so many letters' heights.</summary>
    public Chart Words(double atX, double atY, string text, Anchor anchor = Anchor.Start, double up = 0.35, double right = 0.35, bool bold = false, Tone tone = Tone.Ink)
    {
        marks.Add(new Mark.Words(X(atX) + right * Size, Y(atY) - up * Size, text, Size * 0.92, tone, anchor, bold));
        return this;
    }

    double X(double value) => Left + (value - x.Low) / (x.High - x.Low) * (Right - Left);

    double Y(double value) => Bottom - (value - y.Low) / (y.High - y.Low) * (Bottom - Top);

    static string Text(double tick) => Math.Round(tick, 6).ToString("0.######", CultureInfo.InvariantCulture);
}
