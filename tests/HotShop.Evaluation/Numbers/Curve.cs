namespace HotShop.Evaluation.Numbers;

/// <summary>Points of a function, evenly spaced.</summary>
static class Curve
{
    public static IReadOnlyList<(double X, double Y)> Of(double from, double to, double step, Func<double, double?> value)
    {
        var points = new List<(double, double)>();
        for (var i = 0; from + i * step <= to + step * 1e-9; i++)
            if (value(from + i * step) is { } y && double.IsFinite(y)) points.Add((from + i * step, y));
        return points;
    }
}
