namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Draws the strip of money turned for a phone: the past above, what is expected below, a row a step with its amount beside it.</summary>
static class StripDown
{
    public static Drawing Draw(CostStrip strip, double width, double size)
    {
        var marks = new List<Mark>();
        var (row, left, right, keys) = (size * 1.45, size * 4.3, width - size * 6.2, size * 1.5 * Math.Ceiling(strip.Keys.Count / 2.0) + size);
        var highest = (double)Math.Max(strip.Highest, 0.01m);
        double X(decimal amount) => left + (double)amount / highest * (right - left);

        for (var i = 0; i < strip.Keys.Count; i++)
        {
            var (x, y) = (i % 2 * width / 2, size * (1 + 1.5 * (i / 2)));
            marks.Add(new Mark.Box(x, y - size * 0.8, size * 0.8, size * 0.9, strip.Keys[i].Tone));
            marks.Add(new Mark.Line(Around(x, y - size * 0.8, size * 0.8, size * 0.9), Tone.Faint, 0.7));
            marks.Add(new Mark.Words(x + size * 1.2, y, strip.Keys[i].Name, size, Tone.Dim));
        }
        for (var i = 0; i < strip.Steps.Count; i++)
        {
            var (step, y) = (strip.Steps[i], keys + i * row);
            if (step.IsClosed) marks.Add(new Mark.Box(left, y, right - left, row, Tone.Shade));
            Row(marks, step, y + 1, row - 2, X, (right - left) / 3);
            marks.Add(new Mark.Words(0, y + row * 0.72, step.Row, size * 0.95, step.IsExpected ? Tone.Faint : Tone.Dim));
            if (step.Shown is { } shown) marks.Add(new Mark.Words(width, y + row * 0.72, shown, size * 0.95, step.IsExpected ? Tone.Faint : Tone.Ink, Anchor.End));
            if (step.Change is not null) marks.Add(new Mark.Line([new(left, y), new(width, y)], Tone.Ink, 1.2, IsDashed: true));
            var end = Math.Max(X(step.Range?.High ?? step.Total), step.IsUnmeasured ? left + (right - left) / 3 : 0);
            if ((step.Change ?? step.Note) is { } words && end + size * (words.Length * 0.52 + 0.6) < width - size * 5.4)
                marks.Add(new Mark.Words(end + size * 0.5, y + row * 0.72, words, size * 0.9, Tone.Dim));
        }
        var height = keys + strip.Steps.Count * row + size * 0.5;
        marks.Add(new Mark.Line([new(left, keys), new(left, height - size * 0.5)], Tone.Dim, 1));
        // Below today's row: across it, the line would strike out its words.
        if (strip.NowAfter is { } now) marks.Add(new Mark.Line([new(0, keys + Math.Ceiling(now) * row), new(width, keys + Math.Ceiling(now) * row)], Tone.Ink, 2.2));
        return new(width, height, strip.Title, marks);
    }

    static void Row(List<Mark> marks, StripStep step, double y, double height, Func<decimal, double> x, double emptyHatch)
    {
        decimal sum = 0;
        foreach (var part in step.Parts.Where(p => p.Amount > 0))
        {
            marks.Add(new Mark.Box(x(sum), y, x(sum + part.Amount) - x(sum), height, part.Tone, step.IsExpected ? Fill.Expected : Fill.Solid));
            marks.Add(new Mark.Line([new(x(sum + part.Amount), y), new(x(sum + part.Amount), y + height)], Tone.Ground, 1));
            sum += part.Amount;
        }
        if (sum > 0) marks.Add(new Mark.Line([new(x(sum), y), new(x(sum), y + height)], Tone.Faint, 1));
        if (step.IsUnmeasured) marks.Add(new Mark.Box(x(0), y, Math.Max(x(sum) - x(0), emptyHatch), height, Tone.Dim, Fill.Hatched));
        if (step.Range is { } range) marks.Add(new Mark.Box(x(range.Low), y, x(range.High) - x(range.Low), height, Tone.Band, Fill.Expected));
    }

    static Spot[] Around(double x, double y, double width, double height) => [new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height), new(x, y)];
}
