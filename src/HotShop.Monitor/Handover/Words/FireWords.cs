using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Modes;

namespace HotShop.Monitor.Handover.Words;

/// <summary>Lows and highs of each appliance, and how it kept to what was asked.</summary>
static class FireWords
{
    /// <summary>Less is said as "even": no controller does better than this over a night (common practice). K.</summary>
    const double EvenKelvin = 4;

    public static IReadOnlyList<HandoverLine> Of(Morning morning, MorningTimes times) => [.. morning.Appliances.Select(a => Line(a, morning.Night, times))];

    static HandoverLine Line(ApplianceNight a, Night night, MorningTimes times)
    {
        if (a is not { Low: { } low, High: { } high, Last: { } last }) return new($"{a.Name}: no reading all night.");
        var text = a.Mode is Mode.Off or Mode.OutOfService
            ? $"{a.Name}: {(a.Mode == Mode.Off ? "off" : "out of service")}{(a.ModeSince is { } since ? $" since {times.At(since)}" : "")}, {(last.Celsius < high.Celsius - 10 ? $"down from {Say.Temperature(high.Celsius)} to {Say.Temperature(last.Celsius)}" : $"at {Say.Temperature(last.Celsius)}")}."
            : high.Celsius - low.Celsius < EvenKelvin ? $"{a.Name}: even, {Say.Temperature(low.Celsius)} to {Say.Temperature(high.Celsius)}."
            : $"{a.Name}: lowest {Say.Temperature(low.Celsius)} at {times.At(low.At)}, highest {Say.Temperature(high.Celsius)} at {times.At(high.At)}.";
        var parts = new List<string>();
        if (a.Kept is { } kept) parts.Add(Kept(kept, times));
        if (a.Gaps.Count > 0) parts.Add("No reading " + string.Join(", ", a.Gaps.Take(4).Select(g => $"{times.At(g.From)} to {times.At(g.To)}")) + (a.Gaps.Count > 4 ? " and at other times." : "."));
        return new(text, parts.Count > 0 ? string.Join(" ", parts) : null);
    }

    static string Kept(Kept kept, MorningTimes times)
    {
        var asked = kept.IsCurve ? "its curve" : "its set point";
        if (kept.IsClose) return $"Kept within {Say.Difference(Math.Abs(kept.MostKelvin))} of {asked}.";
        return $"Up to {Say.Difference(Math.Abs(kept.MostKelvin))} {(kept.MostKelvin < 0 ? "below" : "above")} {asked} at {times.At(kept.At)}; {MorningTimes.Span(kept.Beyond)} more than {Say.Difference(Keeping.WideKelvin)} off.";
    }
}
