namespace HotShop.Physics.Statistics;

/// <summary>Running sum of what was used beyond what was expected: falling means saved, rising means wasted, a bend marks a change.</summary>
public static class RunningDifference
{
    /// <summary>Sum of actual less expected up to each place, in their unit. Only differences between places mean something.</summary>
    /// <param name="expected">As many as <paramref name="actual"/>.</param>
    public static IReadOnlyList<double> Of(IReadOnlyList<double> actual, IReadOnlyList<double> expected)
    {
        ArgumentNullException.ThrowIfNull(actual);
        ArgumentNullException.ThrowIfNull(expected);
        if (actual.Count != expected.Count) throw new ArgumentException($"{expected.Count} expectations for {actual.Count} values", nameof(expected));
        var sum = 0.0;
        return [.. actual.Zip(expected, (a, e) => sum += a - e)];
    }
}
