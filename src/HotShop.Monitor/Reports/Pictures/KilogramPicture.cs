using HotShop.Monitor.Money;

namespace HotShop.Monitor.Reports.Pictures;

/// <summary>Energy of a kilogram over throughput: the furnace's own line with its band, earlier months as rings, this one as a dot.</summary>
static class KilogramPicture
{
    public static Drawing Draw(KilogramCurve curve, StudioFormat format, double width, double size)
    {
        var height = width * 0.56;
        var (left, right, top, bottom) = (size * 2.6, width - size * 0.8, size * 2, height - size * 2);
        var dots = curve.Months.Append(curve.Here).OfType<KilogramAt>().ToList();
        var (x0, x1) = (curve.Line[0].KilogramsPerDay, curve.Line[^1].KilogramsPerDay);
        var low = Math.Min(curve.Line.Min(p => p.KwhPerKilogram.Low95), dots.Select(d => d.KwhPerKilogram.Value).DefaultIfEmpty(double.MaxValue).Min()) * 0.95;
        var high = Math.Max(curve.Line.Max(p => p.KwhPerKilogram.High95), dots.Select(d => d.KwhPerKilogram.Value).DefaultIfEmpty(0).Max()) * 1.05;
        double X(double kilograms) => left + (kilograms - x0) / (x1 - x0) * (right - left);
        double Y(double energy) => bottom - (energy - low) / (high - low) * (bottom - top);

        var marks = new List<Mark>
        {
            new Mark.Words(0, size, "kWh/kg, over glass a day", size * 0.95, Tone.Dim),
            new Mark.Area([.. curve.Line.Select(p => new Spot(X(p.KilogramsPerDay), Y(p.KwhPerKilogram.High95))), .. curve.Line.Reverse().Select(p => new Spot(X(p.KilogramsPerDay), Y(p.KwhPerKilogram.Low95)))], Tone.Band, Fill.Expected),
            new Mark.Line([.. curve.Line.Select(p => new Spot(X(p.KilogramsPerDay), Y(p.KwhPerKilogram.Value)))], Tone.Ink, size * 0.11),
            new Mark.Line([new(left, bottom), new(right, bottom)], Tone.Hair, 1),
        };
        foreach (var tick in Between(low, high)) marks.Add(new Mark.Words(left - size * 0.5, Y(tick) + size * 0.35, format.Number(tick, tick < 10 ? 1 : 0), size * 0.9, Tone.Faint, Anchor.End));
        foreach (var tick in Between(x0, x1)) marks.Add(new Mark.Words(Math.Clamp(X(tick), left + size * 1.6, right - size * 1.6), bottom + size * 1.4, format.Glass(tick), size * 0.9, Tone.Faint, Anchor.Middle));
        foreach (var month in curve.Months) marks.Add(new Mark.Dot(X(month.KilogramsPerDay), Y(month.KwhPerKilogram.Value), size * 0.3, Tone.Dim, IsOpen: true));
        if (curve.Here is { } here)
        {
            marks.Add(new Mark.Dot(X(here.KilogramsPerDay), Y(here.KwhPerKilogram.Value), size * 0.45, Tone.Ink));
            // The curve falls to the right: above it there is room at the right, below it at the left.
            var isRight = X(here.KilogramsPerDay) > (left + right) / 2;
            marks.Add(new Mark.Words(isRight ? X(here.KilogramsPerDay) - size * 0.8 : right, Y(here.KwhPerKilogram.Value) + size * (isRight ? 1.3 : -0.7), $"{here.Label}: {here.KwhPerKilogram.Text}", size, Tone.Ink, Anchor.End, IsBold: true));
        }
        return new(width, height, $"{curve.FurnaceName}: energy of a kilogram over kilograms a day. The line is what throughput alone explains; rings are earlier months, the dot is this one. The table below says the same.", marks);
    }

    /// <summary>One to five round numbers within the range.</summary>
    static IEnumerable<double> Between(double low, double high)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10((high - low) / 4)));
        while ((high - low) / step > 4) step *= (high - low) / step > 8 ? 5 : 2;
        for (var tick = Math.Ceiling(low / step) * step; tick <= high; tick += step) yield return tick;
    }
}
