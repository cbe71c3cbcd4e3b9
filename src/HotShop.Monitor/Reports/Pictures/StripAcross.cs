namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Draws the strip of money from left to right, with its key at the right: for the desk, the wall and the printed page.</summary>
static class StripAcross
{
    /// <param name="size">Height of the letters, in the drawing's units.</param>
    public static Drawing Draw(CostStrip strip, double width, double height, double size)
    {
        var marks = new List<Mark>();
        var (left, right, top, bottom) = (size * 4.4, width - size * 10.6, size * 2.2, height - size * 1.8);
        var step = (right - left) / Math.Max(1, strip.Steps.Count);
        var highest = (double)Math.Max(strip.Highest, 0.01m) * 1.04;
        double X(double steps) => left + steps * step;
        double Y(decimal amount) => bottom - (double)amount / highest * (bottom - top);

        for (var i = 0; i < strip.Steps.Count; i++)
            if (strip.Steps[i].IsClosed) marks.Add(new Mark.Box(X(i), top, step, bottom - top, Tone.Shade));
        foreach (var tick in CostStrip.Ticks(strip.Highest))
        {
            marks.Add(new Mark.Line([new(left, Y(tick)), new(right, Y(tick))], Tone.Hair, 0.7));
            marks.Add(new Mark.Words(left - size * 0.5, Y(tick) + size * 0.35, strip.Axis(tick), size * 0.9, Tone.Faint, Anchor.End));
        }
        marks.Add(new Mark.Words(0, size, strip.Unit, size * 0.95, Tone.Dim));
        for (var i = 0; i < strip.Steps.Count; i++) Column(marks, strip.Steps[i], X(i), step, Y, (bottom - top) / 3);
        marks.Add(new Mark.Line([new(left, bottom), new(right, bottom)], Tone.Dim, 1));
        Labels(marks, strip, X, step, bottom + size * 1.25, size);
        Notes(marks, strip, X, step, top, bottom, size);
        if (strip.NowAfter is { } now)
        {
            marks.Add(new Mark.Line([new(X(now), top - size * 0.4), new(X(now), bottom + size * 0.4)], Tone.Ink, size * 0.14));
            marks.Add(new Mark.Words(X(now), bottom + size * 1.3, "now", size, Tone.Ink, Anchor.Middle, IsBold: true));
        }
        Keys(marks, strip.Keys, right + size * 1.2, top, bottom, size);
        return new(width, height, strip.Title, marks);
    }

    static void Column(List<Mark> marks, StripStep step, double x, double width, Func<decimal, double> y, double emptyHatch)
    {
        decimal sum = 0;
        foreach (var part in step.Parts.Where(p => p.Amount > 0))
        {
            var (foot, head) = (y(sum), y(sum + part.Amount));
            marks.Add(new Mark.Box(x, head, width, foot - head, part.Tone, step.IsExpected ? Fill.Expected : Fill.Solid));
            if (foot - head > 1.5) marks.Add(new Mark.Line([new(x, head), new(x + width, head)], Tone.Ground, 1));
            sum += part.Amount;
        }
        if (sum > 0)
        {
            marks.Add(new Mark.Line([new(x, y(0)), new(x, y(sum))], Tone.Ground, 0.8));
            // The top is drawn in ink: the lightest layer would end nowhere on the page's ground.
            marks.Add(new Mark.Line([new(x, y(sum)), new(x + width, y(sum))], Tone.Faint, 1));
        }
        // Where nothing is known there is no height to hatch: the hatch then stands for itself.
        if (step.IsUnmeasured) marks.Add(new Mark.Box(x, Math.Min(y(sum), y(0) - emptyHatch), width, Math.Max(y(0) - y(sum), emptyHatch), Tone.Dim, Fill.Hatched));
        if (step.Range is not { } range) return;
        marks.Add(new Mark.Box(x, y(range.High), width, y(range.Low) - y(range.High), Tone.Band, Fill.Expected));
        marks.Add(new Mark.Line([new(x, y(sum)), new(x + width, y(sum))], Tone.Dim, 1));
    }

    static void Labels(List<Mark> marks, CostStrip strip, Func<double, double> x, double step, double y, double size)
    {
        var hasRoomForAll = step > size * 2.2;
        for (var i = 0; i < strip.Steps.Count; i++)
        {
            var middle = x(i + 0.5);
            if (!hasRoomForAll && !strip.Steps[i].IsMain) continue;
            if (strip.NowAfter is { } now && Math.Abs(middle - x(now)) < size * 2.4) continue;
            marks.Add(new Mark.Words(middle, y, hasRoomForAll ? strip.Steps[i].Label : strip.Steps[i].Row, size * 0.95, Tone.Faint, Anchor.Middle));
        }
    }

    /// <summary>Words above the columns; a later one that would run into an earlier one is left out, its mark stays.</summary>
    static void Notes(List<Mark> marks, CostStrip strip, Func<double, double> x, double step, double top, double bottom, double size)
    {
        var free = size * 6.5;   // right of the unit
        for (var i = 0; i < strip.Steps.Count; i++)
        {
            var one = strip.Steps[i];
            if (one.Change is { } change)
            {
                marks.Add(new Mark.Line([new(x(i), top - size * 1.1), new(x(i), bottom)], Tone.Ink, 1.2, IsDashed: true));
                Put(x(i) + size * 0.4, change, Tone.Ink);
            }
            else if (one.Note is { } note && (i == 0 || strip.Steps[i - 1].Note != note) && (note.Length * 0.5 * size) < step * Run(strip, i, note) + size * 3) Put(x(i) + size * 0.2, note, Tone.Dim);
        }

        void Put(double at, string words, Tone tone)
        {
            if (at < free) return;
            marks.Add(new Mark.Words(at, size, words, size * 0.95, tone));
            free = at + words.Length * size * 0.52;
        }
    }

    static int Run(CostStrip strip, int from, string note) => strip.Steps.Skip(from).TakeWhile(s => s.Note == note).Count();

    static void Keys(List<Mark> marks, IReadOnlyList<StripKey> keys, double x, double top, double bottom, double size)
    {
        var each = Math.Min(size * 3, (bottom - top) / Math.Max(1, keys.Count));
        for (var i = 0; i < keys.Count; i++)
        {
            // The last key is the lowest layer.
            var y = bottom - (keys.Count - i) * each + each * 0.3;
            marks.Add(new Mark.Box(x, y - size * 0.1, size * 0.7, size * 1.9, keys[i].Tone));
            marks.Add(new Mark.Line([new(x, y - size * 0.1), new(x + size * 0.7, y - size * 0.1), new(x + size * 0.7, y + size * 1.8), new(x, y + size * 1.8), new(x, y - size * 0.1)], Tone.Faint, 0.7));
            marks.Add(new Mark.Words(x + size * 1.2, y + size * 0.7, keys[i].Name, size, Tone.Ink));
            marks.Add(new Mark.Words(x + size * 1.2, y + size * 1.75, keys[i].Shown, size * 0.95, Tone.Dim));
        }
    }
}
