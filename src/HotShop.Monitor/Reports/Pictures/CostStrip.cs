namespace HotShop.Monitor.Reports.Pictures;

/// <summary>One layer of a step: what it was for and what it cost.</summary>
readonly record struct StripPart(Tone Tone, decimal Amount);

/// <summary>A day of a month, or a month of a year.</summary>
/// <param name="Label">Below the strip, short: "12", "Oct".</param>
/// <param name="Row">Beside the strip where it runs down: "Mon 12".</param>
/// <param name="Parts">From the ground up.</param>
/// <param name="Shown">Its amount as the page writes it; null where there is none.</param>
/// <param name="Note">What is special about it, in two or three words.</param>
sealed record StripStep(string Label, string Row, IReadOnlyList<StripPart> Parts, string? Shown)
{
    public string? Note { get; init; }

    /// <summary>A label that stands even where there is no room for all: a week's Monday.</summary>
    public bool IsMain { get; init; }

    /// <summary>Not over yet: drawn lighter, with the range of its amount.</summary>
    public bool IsExpected { get; init; }

    /// <summary>Nothing was measured in it: what stands there is an estimate, and hatched.</summary>
    public bool IsUnmeasured { get; init; }

    public bool IsClosed { get; init; }

    /// <summary>A mark of what changed on it, e.g. "new gas price"; null for nothing.</summary>
    public string? Change { get; init; }

    /// <summary>95 % of an expected amount.</summary>
    public (decimal Low, decimal High)? Range { get; init; }

    public decimal Total => Parts.Sum(p => p.Amount);
}

/// <param name="Words">Name and amount beside the layer's colour.</param>
readonly record struct StripKey(Tone Tone, string Name, string Shown);

/// <summary>The strip of money: steps of equal width, the past to the left or above, a line for now.</summary>
/// <param name="Unit">What a step's height is: "euros a day".</param>
/// <param name="NowAfter">Steps and part of a step that are over; null where now lies outside.</param>
/// <param name="Axis">Writes a round amount.</param>
sealed record CostStrip(string Title, string Unit, IReadOnlyList<StripStep> Steps, IReadOnlyList<StripKey> Keys, double? NowAfter, Func<decimal, string> Axis)
{
    public decimal Highest => Steps.Count == 0 ? 0 : Steps.Max(s => Math.Max(s.Total, s.Range?.High ?? 0));

    /// <summary>Two to five round amounts above 0 that span the steps.</summary>
    public static IReadOnlyList<decimal> Ticks(decimal highest)
    {
        if (highest <= 0) return [];
        var decade = 1m;
        while (decade * 10 <= highest) decade *= 10;
        while (decade > highest) decade /= 10;
        foreach (var step in new[] { 0.25m, 0.5m, 1m, 2m, 2.5m, 5m })
            if (highest / (decade * step) is var count and < 5.5m) return [.. Enumerable.Range(1, (int)count).Select(i => i * decade * step)];
        return [decade];
    }
}
