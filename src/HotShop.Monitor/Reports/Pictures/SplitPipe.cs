namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Where it went, as the pipe that carries it: each branch as thick as its money.</summary>
static class SplitPipe
{
    const int MostBranches = 7;

    /// <param name="Amount">Decides the thickness; drawn are those above 0.</param>
    public readonly record struct Branch(Tone Tone, string Name, string Shown, decimal Amount);

    /// <param name="rest">How what is too small to draw is called and written.</param>
    public static Drawing Draw(IReadOnlyList<Branch> all, Func<decimal, string> rest, string title, double width, double size)
    {
        var branches = Gathered([.. all.Where(b => b.Amount > 0)], rest);
        var sum = branches.Sum(b => b.Amount);
        var (row, trunk) = (size * 2.55, size * 9);
        var height = Math.Max(row * Math.Max(branches.Count, 1), trunk + size);
        var marks = new List<Mark>();
        var (from, to) = ((height - trunk) / 2, Math.Max(0, (height - row * branches.Count) / 2));
        var (start, turn, end) = (0.0, width * 0.16, width * 0.32);
        foreach (var branch in branches)
        {
            var thick = (double)(branch.Amount / sum) * trunk;
            var middle = to + row / 2;
            // A branch may be thicker than its row; it then leans towards the trunk's side.
            var (top, low) = (middle - Math.Min(thick, row * 0.92) / 2, middle + Math.Min(thick, row * 0.92) / 2);
            List<Spot> edge = [.. Curve(start, from, turn, end, top), .. Curve(start, from + thick, turn, end, low).Reverse()];
            marks.Add(new Mark.Area(edge, branch.Tone));
            marks.Add(new Mark.Line([.. edge, edge[0]], Tone.Faint, 0.7));
            marks.Add(new Mark.Words(end + size * 0.8, middle - size * 0.1, branch.Name, size));
            marks.Add(new Mark.Words(end + size * 0.8, middle + size * 1.0, branch.Shown, size * 0.95, Tone.Dim));
            from += thick;
            to += row;
        }
        return new(width, height, title, marks);
    }

    static List<Branch> Gathered(IReadOnlyList<Branch> all, Func<decimal, string> rest)
    {
        if (all.Count <= MostBranches) return [.. all];
        var small = all.Skip(MostBranches - 1).Sum(b => b.Amount);
        return [.. all.Take(MostBranches - 1), new(Tone.Other, $"{all.Count - MostBranches + 1} smaller ones", rest(small), small)];
    }

    /// <summary>Level, bent, level: a cubic curve whose ends are horizontal.</summary>
    static IEnumerable<Spot> Curve(double x0, double y0, double middle, double x1, double y1)
    {
        for (var i = 0; i <= 16; i++)
        {
            var t = i / 16.0;
            var (a, b, c, d) = ((1 - t) * (1 - t) * (1 - t), 3 * t * (1 - t) * (1 - t), 3 * t * t * (1 - t), t * t * t);
            yield return new(a * x0 + b * middle + c * middle + d * x1, (a + b) * y0 + (c + d) * y1);
        }
    }
}
