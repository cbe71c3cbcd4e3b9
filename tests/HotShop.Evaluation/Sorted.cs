namespace HotShop.Evaluation;

/// <summary>Quantiles of what was seen, with no distribution assumed.</summary>
static class Sorted
{
    /// <summary>Value below which a share of the values lies, linear between neighbours; the median at 0.5.</summary>
    /// <exception cref="ArgumentException">There are no values.</exception>
    public static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToArray();
        if (sorted.Length == 0) throw new ArgumentException("a quantile of nothing", nameof(values));
        var place = share * (sorted.Length - 1);
        var below = (int)place;
        return below + 1 < sorted.Length ? sorted[below] + (place - below) * (sorted[below + 1] - sorted[below]) : sorted[below];
    }
}
